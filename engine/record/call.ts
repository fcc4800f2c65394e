import { z } from 'zod';
import { parseDocument, zDay, zHours } from '../foundation/document.ts';
import { zSlug } from './document.ts';

const unknown = z.literal('unknown');
const zYear = z.int().min(1900).max(2199);
const zYears = z.strictObject({ from_year: zYear, to_year: zYear }).refine((y) => y.from_year <= y.to_year, {
  message: 'needs the earlier year first',
});
const zWord = z.string().trim().min(1).max(200);

/** The call document, `call/1`: six questions to a caller. What is left out is unknown, and stands on the worse side. */
export const zCall = z.strictObject({
  sparwright: z.literal('call/1'),
  day: zDay,
  registration: zWord,
  type: zWord,
  model: zWord,
  serial: zWord.optional(),
  caller: zWord.optional(),
  total_h: z.union([unknown, zHours]).optional().meta({ description: '1. Total now' }),
  meter: z.enum(['book', 'tachometer', 'engine_running', 'airborne', 'unknown']).optional(),
  landings: z.union([unknown, z.int().min(0).max(10_000_000)]).optional(),
  built_year: z.union([unknown, zYear]).optional().meta({ description: '2. Year built' }),
  uses: z
    .union([
      unknown,
      z.array(
        z
          .strictObject({ use: zSlug, from_year: zYear, to_year: zYear })
          .refine((y) => y.from_year <= y.to_year, 'needs the earlier year first'),
      ),
    ])
    .optional()
    .meta({ description: '3. Years of hire, school, tow or other work' }),
  wing_changed: z.enum(['yes', 'no', 'unknown']).optional().meta({ description: '4. Was a wing ever changed?' }),
  missing_books: z
    .union([unknown, z.array(zYears)])
    .optional()
    .meta({ description: '5. Missing books' }),
  kits: z
    .union([unknown, z.array(zSlug)])
    .optional()
    .meta({ description: '6. Kits' }),
  repairs: z.string().trim().max(2000).optional().meta({ description: '6. Repairs, in the words of the caller' }),
});
export type Call = z.output<typeof zCall>;
export type CallInput = z.input<typeof zCall>;

/** @throws Refusal `foundation.document-invalid` */
export const readCall = (input: unknown): Call => parseDocument(zCall, input, 'call');
