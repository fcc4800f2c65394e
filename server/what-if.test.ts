import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Sheet, TableBlock } from '../sheets/index.ts';
import { testStore } from '../store/testing/database.ts';
import { openDemo } from './demo.ts';
import { type Desk, gather } from './desk.ts';
import { whatIf, whatIfChoices } from './what-if.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let desk: Desk;
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
  desk = { store: test.store, today: () => '2026-11-25' };
});
afterAll(() => test.done());

const LMB = 'aircraft:0612';
const said = (s: Sheet) => s.answer.map((x) => x.text).join('');
const table = (s: Sheet, title: RegExp) =>
  s.blocks.find((b): b is TableBlock => b.block === 'table' && title.test(b.title));
const ask = async (question: unknown, of = LMB) => {
  const last = await test.store.log.last('demo');
  const sheet = await whatIf(desk, 'demo', of, question);
  expect(await test.store.log.last('demo')).toBe(last);
  return sheet;
};

describe('what if', () => {
  it('it flew more or less: dates move, standings and figures stay', async () => {
    const [slow, fast] = [await ask({ rate_h_per_year: 20 }), await ask({ rate_h_per_year: 400 })];
    const treat = (s: Sheet) => table(s, /Standings/)!.rows.map((r) => r.cells.treat);
    expect(JSON.stringify(treat(slow))).not.toContain('→');
    expect(said(slow)).toContain('If it flew 20 h a year');
    const about = (s: Sheet) => JSON.stringify(table(s, /Standings/)!.rows.map((r) => r.cells.about));
    expect(about(slow)).not.toBe(about(fast));
    expect(table(slow, /lived through/)!.rows).toEqual([]);
  });
  it('at no flying at all, only the calendar is reached', async () => {
    const none = await ask({ rate_h_per_year: 0 });
    expect(JSON.stringify(table(none, /Standings/)!.rows)).toContain('not before');
  });
  it('it flew in another use: what is left in hours is counted at the new use', async () => {
    const before = await gather(desk, 'demo', LMB);
    const tow = before.assessments.find((a) => a.counted)!;
    const sheet = await ask({ use: 'tow', from: '2026-11-25' });
    const row = table(sheet, /Standings/)!.rows.find((r) => r.id.startsWith(tow.subject));
    expect(JSON.stringify(row?.cells.due)).toContain('→');
    expect(said(sheet)).toContain('If it flew tow only since 25 Nov 2026');
  });
  it('it had flown in another use since a day: the papers for that time are taken as wrong, not beside it', async () => {
    const sheet = await ask({ use: 'tow', from: '2020-01-01' });
    expect(JSON.stringify(sheet.blocks)).not.toContain('record.uses-contradict');
    expect(JSON.stringify(table(sheet, /Standings/)!.rows)).toContain('overdue');
  });
  it('a later change of use is never softer than today’s flying', async () => {
    const now = await gather(desk, 'demo', LMB);
    const sheet = await ask({ use: 'private', from: '2028-01-01' });
    const words = JSON.stringify(table(sheet, /Standings/)!.rows.map((r) => r.cells.treat));
    expect(words).not.toMatch(/overdue → (due|soon|not)|due → (soon|not)/);
    expect(said(sheet)).toMatch(/the harder of today’s flying and private counts|no standing and no figure/);
    expect(now.assessments.length).toBeGreaterThan(0);
  });
  it('a part moves to another aircraft: both are shown, and the part takes its life along', async () => {
    const sheet = await ask({ part: 'wing:0447-L', to: 'aircraft:0530' });
    expect(sheet.blocks.some((b) => b.title.startsWith('ZQ-KTA: Standings'))).toBe(true);
    expect(JSON.stringify(table(sheet, /^Standings/)!.rows)).toContain('not looked at');
  });
  it('another aircraft is named, and what would happen there is said', async () => {
    const words = said(await ask({ part: 'wing:0447-L', to: 'aircraft:0530' }));
    expect(words).toMatch(/^If the left wing moved to ZQ-KTA, .* On ZQ-KTA, /);
  });
  it('where a part is already, that is said and nothing changes', async () => {
    const home = await ask({ part: 'wing:0447-L', to: LMB });
    expect(said(home)).toBe(
      'As the left wing sits in ZQ-LMB already, no standing and no figure of this aircraft changes.',
    );
    const { parts } = await whatIfChoices(desk, 'demo', LMB);
    const within = await test.store.aircraft.parts('demo', { sitsIn: 'wing:0447-L' });
    expect(within.length).toBeGreaterThan(0);
    for (const p of within) expect(said(await ask({ part: p.id, to: LMB }))).toContain('sits in ZQ-LMB already');
    const shelf = parts.find((p) => p.text.endsWith('on the shelf'))!;
    expect(said(await ask({ part: shelf.id, to: 'shelf' }))).toMatch(/^As the .* lies on the shelf already/);
  });
  it('a part goes to the shelf', async () => {
    expect(said(await ask({ part: 'wing:0447-L', to: 'shelf' }))).toContain('moved to the shelf');
  });
  it('the paper of a gap turns up', async () => {
    const choices = await whatIfChoices(desk, 'demo', LMB);
    expect(choices.gaps.length).toBeGreaterThan(0);
    const gap = choices.gaps.find((g) => g.text.includes('lost'))!;
    const kind = await ask({ gap: gap.id, use: 'private' });
    const hard = await ask({ gap: gap.id, use: 'tow' });
    expect(JSON.stringify(table(kind, /without paper/)!.rows)).toContain('closed');
    expect(JSON.stringify(kind.blocks)).not.toBe(JSON.stringify(hard.blocks));
  });
});

describe('what if refuses', () => {
  it.each([
    ['an unknown part', { part: 'spar:none', to: 'shelf' }, 'server.not-found'],
    ['an unknown aircraft', { part: 'wing:0447-L', to: 'aircraft:none' }, 'server.not-found'],
    ['an unknown stretch', { gap: 'none', use: 'tow' }, 'server.not-found'],
    ['nothing asked', {}, 'foundation.document-invalid'],
    ['a rate below zero', { rate_h_per_year: -1 }, 'foundation.document-invalid'],
    ['a day that is none', { use: 'tow', from: '2026-02-30' }, 'foundation.document-invalid'],
  ])('%s', async (_, question, code) => {
    await expect(whatIf(desk, 'demo', LMB, question)).rejects.toMatchObject({ code });
  });
  it('a paper that says nothing', async () => {
    const { gaps } = await whatIfChoices(desk, 'demo', LMB);
    await expect(whatIf(desk, 'demo', LMB, { gap: gaps[0]!.id })).rejects.toMatchObject({ code: 'server.bad-request' });
  });
});
