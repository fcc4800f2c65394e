import { z } from 'zod';
import { type Day, growth, parseDocument } from '../engine/index.ts';
import { growthChanceSheet } from '../sheets/index.ts';
import { aircraftAsked } from './basis/aircraft.ts';
import { answerGrowth } from './basis/answers.ts';
import type { Desk } from './desk.ts';
import { growthDocumentOf } from './growth.ts';
import type { Asked } from './work/works.ts';

const zName = z.string().max(200).optional();
const zQuestion = z.strictObject({
  name: zName,
  document: z.unknown().optional(),
  aircraft: zName,
  part: zName,
  mix: z.string().max(400).optional(),
  day: z.string().optional(),
  lives: z.int().min(10).max(1_000_000).optional(),
  seed: z
    .int()
    .min(0)
    .max(2 ** 32 - 1)
    .optional(),
  units: z.enum(['mm', 'inch']).default('mm'),
});

/**
 * A question about chance, composed and ready for the hands: refused at once where it cannot be computed.
 * @throws Refusal as `growthDocumentOf`, `growth.chance-incomplete`, `growth.detection-reversed`
 */
export async function chanceAsked(
  desk: Desk,
  shop: string,
  body: unknown,
): Promise<Asked<'growth chance', ReturnType<typeof growthChanceSheet>>> {
  const { lives, seed, units, ...asked } = parseDocument(zQuestion, body, 'question about chance');
  const { invented } = await desk.store.shops.get(shop);
  const of = { ...asked, name: asked.name || (await nameFor(desk, shop, asked)) };
  const whole = await growthDocumentOf(desk, shop, of);
  const { chance } = whole;
  const document: growth.GrowthDocument = {
    ...whole,
    ...(invented ? { invented } : {}),
    ...(chance ? { chance: { ...chance, lives: lives ?? chance.lives, seed: seed ?? chance.seed } } : {}),
  };
  const answer = await answerGrowth(document, desk);
  const input = growth.chanceTask(document, answer.value);
  const prepared = growth.prepareChance(input);
  growth.livesOf(prepared, { from: 0, to: 1 });
  // It stands beside the answer without scatter, which says what that rests on.
  const alone = { value: { ...answer.value, sources: [] }, working: [], warnings: [] };
  return {
    task: 'growth chance',
    input,
    seed: prepared.chance.seed,
    items: prepared.chance.lives,
    reduce: (parts) =>
      growthChanceSheet({
        answer: growth.withChance(alone, document, growth.chanceFrom(prepared, parts)),
        day: document.day ?? (desk.today() as Day),
        units,
        ...(of.aircraft && document.subject ? { about: [{ label: 'Part', value: document.subject }] } : {}),
      }),
  };
}

/** The kept document that an aircraft's page is answered with, where none is named. */
async function nameFor(
  desk: Desk,
  shop: string,
  asked: { readonly aircraft?: string | undefined; readonly document?: unknown; readonly day?: string | undefined },
): Promise<string | undefined> {
  if (!asked.aircraft || asked.document !== undefined) return undefined;
  const { chosen } = await aircraftAsked(desk, shop, 'growth', asked.aircraft, { day: asked.day });
  return chosen.is === 'found' ? chosen.head.name : undefined;
}
