import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { letterSheet } from '../sheets/index.ts';
import { assessment, letterInput, outlookIn } from '../sheets/testing/case.ts';
import { letterPdf } from './letter.ts';

const found = spawnSync('pdftotext', ['-v']).error === undefined;
const pages = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
const key = (id: string): string => `${id}|W-14|first_look`;
const outlooks = new Map(['spar:left', 'spar:right'].map((id, i) => [key(id), outlookIn(240 + 2000 * i, 4200)]));
const typical = letterInput(
  [assessment('spar:left', 'soon due', 'not yet due'), assessment('spar:right', 'not yet due')],
  outlooks,
);
const many = Array.from({ length: 14 }, (_, i) =>
  assessment(`spar:${i}`, i % 2 ? 'overdue' : 'not yet due', 'not yet due', i % 2 ? -i : 100 * i),
);
const long = 'Consolidated Structures and Restoration Works of the Upper Valley, Limited '.repeat(3);

describe('the letter on paper', () => {
  it.each([
    ['typical', typical],
    ['nothing asked', letterInput([])],
    ['fourteen spars', letterInput(many, new Map(many.map((a) => [`${a.subject}|W-14|first_look`, outlookIn(500)])))],
    [
      'long names',
      letterInput(many, outlooks, {
        shop: { name: long, address: long, person: long, telephone: '4410', invented: true },
        listChecked: { day: typical.day, by: long },
        number: long,
      }),
    ],
    [
      'long titles',
      letterInput(
        many.map((a) => ({ ...a, action: { ...a.action, title: long } })),
        outlooks,
      ),
    ],
  ])('is one page: %s', async (_, input) => {
    const pdf = await letterPdf(letterSheet(input));
    expect(pages(pdf)).toBe(1);
    if (!found) return;
    const boxes = spawnSync('pdftotext', ['-bbox', '-', '-'], { input: pdf }).stdout.toString();
    const words = [...boxes.matchAll(/yMin="([\d.]+)".*?>([^<]*)<\/word>/g)].map((m) => ({
      y: Number(m[1]),
      word: m[2],
    }));
    const foot = words.filter((w) => w.word === 'Subject').at(-1)!.y;
    const caution = words.filter((w) => w.word === 'logbook').at(-1)!.y;
    expect(caution).toBeLessThan(foot - 8);
    expect(foot).toBeLessThan(842);
  });
  it('shrinks the type and then leaves out what may go, and says so', async () => {
    const letter = letterSheet(typical);
    const crowded = { ...letter, because: `${letter.because} `.repeat(28) };
    const pdf = await letterPdf(crowded);
    expect(pages(pdf)).toBe(1);
    await expect(letterPdf({ ...letter, because: long.repeat(60) })).rejects.toThrow(
      expect.objectContaining({
        code: 'letter.does-not-fit',
        detail: expect.objectContaining({ allowed: 'one page of A4' }),
      }),
    );
    if (!found) return;
    const text = spawnSync('pdftotext', ['-', '-'], { input: pdf }).stdout.toString().replace(/\s+/g, ' ');
    expect(text).toContain('not a logbook entry');
    expect(text).toContain('More stands on the page kept under this number.');
    expect(text).not.toContain('What this does not ask of you');
  });
  it('has the same bytes every time', async () => {
    const [a, b] = [await letterPdf(letterSheet(typical)), await letterPdf(letterSheet(typical))];
    expect(Buffer.compare(Buffer.from(a), Buffer.from(b))).toBe(0);
  });
  it.skipIf(!found)('can be read as text (not run where pdftotext is missing)', async () => {
    const pdf = await letterPdf(letterSheet(typical));
    const text = spawnSync('pdftotext', ['-layout', '-', '-'], { input: pdf }).stdout.toString().replace(/\s+/g, ' ');
    for (const words of [
      'treat it as due in 120 landings',
      'Your log says 5 318.4 h and 5 118 landings',
      'not a logbook entry',
      'What to do now',
      'L-7',
    ])
      expect(text).toContain(words);
    expect(text.match(/treat as the summer of 2027/g)?.length).toBe(1);
  });
});
