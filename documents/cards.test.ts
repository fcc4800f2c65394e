import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { cardsSheet, quoteSheet, type Sheet } from '../sheets/index.ts';
import { answered, doneUpTo, input } from '../sheets/testing/teardown-case.ts';
import { sheetPdf } from './table-paper.ts';

const found = spawnSync('pdftotext', ['-v']).error === undefined;
const pages = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
const squeezed = (s: string): string => s.replace(/\s+/g, '');
const textOf = (pdf: Uint8Array, ...how: string[]): string =>
  spawnSync('pdftotext', [...how, '-', '-'], { input: pdf, maxBuffer: 1e8 }).stdout.toString();
const long =
  'Right lower row of the outboard nose section with the doubled rivets over the splice, skin and cap and doubler, as on the drawing of the maker and of the kit';

describe.skipIf(!found)('work cards on paper (not run where pdftotext is missing)', () => {
  it('lose no step, number every card once, and put two to four on a page on the mean', async () => {
    const pdf = await sheetPdf(cardsSheet(doneUpTo(20)));
    const text = squeezed(textOf(pdf));
    for (const o of answered.value.plan.operations) expect(text).toContain(squeezed(o.title));
    const block = cardsSheet(input).blocks[0]!;
    if (block.block !== 'cards') throw new Error('cards come first');
    const numbers = textOf(pdf).match(/Card \d+ of \d+/g) ?? [];
    expect(new Set(numbers).size).toBe(numbers.length);
    expect(numbers.length / pages(pdf)).toBeGreaterThan(1.8);
    expect(text).toContain('done1Dec2026,M.Orne');
  }, 60_000);
  it('tear no card, also of long names: nothing stands below the last line of a page', async () => {
    const sheet = cardsSheet(input);
    const worded: Sheet = {
      ...sheet,
      blocks: sheet.blocks.map((b) =>
        b.block === 'cards'
          ? {
              ...b,
              cards: b.cards
                .slice(0, 12)
                .map((c) => ({ ...c, title: long, steps: c.steps.map((s) => ({ ...s, title: `${s.id} ${long}` })) })),
            }
          : b,
      ),
    };
    const pdf = await sheetPdf(worded);
    const boxes = textOf(pdf, '-bbox');
    const lowest = Math.max(...[...boxes.matchAll(/yMax="([\d.]+)".*?>([^<]*)<\/word>/g)].map((m) => Number(m[1])));
    expect(lowest).toBeLessThan(842 - 15);
    const shown = worded.blocks.flatMap((b) =>
      b.block === 'cards' ? b.cards.flatMap((c) => c.steps.map((s) => s.id)) : [],
    );
    for (const id of shown) expect(squeezed(textOf(pdf))).toContain(squeezed(id));
  }, 60_000);
});

describe.skipIf(!found)('the quote on paper (not run where pdftotext is missing)', () => {
  it('is two pages upright, with every line of the base, and the caution once', async () => {
    const pdf = await sheetPdf(quoteSheet(input));
    expect(pages(pdf)).toBeLessThanOrEqual(2);
    const text = squeezed(textOf(pdf));
    for (const l of answered.value.quote!.base) expect(text).toContain(squeezed(l.name));
    expect(text.split(squeezed('they approve nothing')).length).toBe(2);
    expect(text).toContain('Allthedataisinvented'.replace('Allthe', 'All'));
    expect(text).toContain('westopandcallyou');
  });
});
