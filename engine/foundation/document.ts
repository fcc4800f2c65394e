import { z } from 'zod';
import { type Day, isDay } from './day.ts';
import { Refusal } from './refusal.ts';

/** Schema pieces shared by every document that goes in. */
export const zDay = z
  .string()
  .refine(isDay, 'is not a day as YYYY-MM-DD')
  .transform((d) => d as Day)
  .meta({ description: 'Calendar day, YYYY-MM-DD', format: 'date' });

/** Hours as decimal number, decimal text or clock text; kept as written, read with `parseHours`. */
export const zHours = z
  .union([z.number(), z.string().regex(/^-?\d+(\.\d+)?$|^-?\d+:[0-5]\d(:[0-5]\d)?$/)])
  .meta({ description: 'Hours: 1234.5 or "1234:30"' });

/** First complaint of a schema, as a refusal that names the place in the document. */
export function parseDocument<S extends z.ZodType>(schema: S, input: unknown, what: string): z.output<S> {
  const result = schema.safeParse(input);
  if (result.success) return result.data;
  const issue = result.error.issues[0]!;
  const place = issue.path.length ? issue.path.map(String).join('.') : 'the document';
  const more = result.error.issues.length > 1 ? ` (and ${result.error.issues.length - 1} more)` : '';
  throw new Refusal('foundation.document-invalid', {
    given: `${what}, at ${place}: ${issue.message}${more}`,
    allowed: `what \`sparwright schema ${what.split(' ')[0]}\` describes; unknown fields are refused`,
    remedy: 'Correct this place and send the document again',
  });
}
