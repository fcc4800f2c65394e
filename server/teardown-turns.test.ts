import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { teardownsKept } from '../examples/index.ts';
import type { Cell, KeyValueBlock, Sheet, TableBlock } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { createServer } from './server.ts';
import { smallFloor, smallJob, smallWing } from './testing/small-wing.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
let day = '2026-11-25';
const by = 'M. Orne';
const send = (method: 'GET' | 'POST', url: string, payload?: object) =>
  app.inject({ method, url, ...(payload ? { payload } : {}), headers: { host, origin: `http://${host}` } });
async function page(url: string): Promise<Sheet> {
  const r = await send('GET', `/api/shops/demo/teardown/${url}`);
  expect(r.statusCode, r.body).toBe(200);
  return r.json();
}
async function post(url: string, payload: object): Promise<Sheet & { name: string; entry: number }> {
  const r = await send('POST', `/api/shops/demo/teardown/${url}`, payload);
  expect(r.statusCode, r.body).toBe(200);
  return r.json();
}
const rowsOf = (s: Sheet, title: RegExp) =>
  s.blocks.find((b): b is TableBlock => b.block === 'table' && title.test(b.title))!.rows.map((r) => r.cells);
const dayIn = (c: Cell | undefined) => (c as { day: string }).day;
const stays = (s: Sheet) =>
  rowsOf(s, /^Jigs$/)
    .map((c) => [(c.jig as { text: string }).text, dayIn(c.from), dayIn(c.to)].join(' '))
    .sort();
const endOn = (s: Sheet) =>
  dayIn(
    s.blocks
      .find((b): b is KeyValueBlock => b.block === 'key-value' && b.title === 'When it ends')!
      .pairs.find((p) => /^At the likely times/.test(p.key))!.cell,
  );
const calendarEnds = (s: Sheet) =>
  new Map(rowsOf(s, /^Jobs$/).map((c) => [(c.job as { href: string }).href.split('/').at(-1)!, dayIn(c.end)]));
const NAMES = teardownsKept.map((t) => t.name);
const [FIRST, SECOND] = NAMES as [string, string];
const titleOf = (name: string) => teardownsKept.find((t) => t.name === name)!.document.title;

beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today: () => day });
  await send('POST', '/api/demo', {});
});
afterAll(async () => {
  await app.close();
  await test.done();
});

describe('jobs of one floor, each on its own page and all on the calendar', () => {
  it('stand in the same jigs on the same days, and end on the same days', async () => {
    const calendar = await page('calendar');
    const own = await Promise.all(NAMES.map((n) => page(`jobs/${n}?page=schedule`)));
    expect(own.flatMap(stays).sort()).toEqual(stays(calendar));
    expect(own.map(endOn)).toEqual(NAMES.map((n) => calendarEnds(calendar).get(n)));
    expect(calendar.because).toMatch(/Each job is planned after what those before it take/);
  });
  it('say whose jig days were taken into account: by name on the schedule, by number on what the owner reads', async () => {
    const pages = await Promise.all(NAMES.map((n) => page(`jobs/${n}?page=schedule`)));
    const after = NAMES.find((_, i) => /Planned after/.test(pages[i]!.because ?? ''))!;
    const before = NAMES.find((n) => n !== after)!;
    expect(pages[NAMES.indexOf(after)]!.because).toContain(`Planned after ${titleOf(before)}: jig days and hands`);
    expect(pages[NAMES.indexOf(before)]!.because).toMatch(/No other job is planned before it on this floor\./);
    const quote = await page(`jobs/${after}?page=quote`);
    expect(quote.because).toMatch(/jig days and hands of 1 job that is planned before it on the same floor/);
    expect(quote.because).not.toContain(titleOf(before));
  });
  it('without the other the second ends no later', async () => {
    const beside = endOn(await page(`jobs/${SECOND}?page=schedule`));
    const before = await page(`jobs/${FIRST}?page=schedule`);
    await post(`jobs/${FIRST}/withdraw`, { because: 'not wanted', by });
    const alone = await page(`jobs/${SECOND}?page=schedule`);
    expect(alone.because).toMatch(/No other job is planned before it/);
    expect(endOn(alone) <= beside).toBe(true);
    await post('jobs', { document: teardownsKept[0].document, by });
    const again = await page(`jobs/${FIRST}?page=schedule`);
    expect(again.because).toContain(`Planned after ${titleOf(SECOND)}`);
    expect(endOn(await page(`jobs/${SECOND}?page=schedule`))).toBe(endOn(alone));
    expect(endOn(again) >= endOn(before)).toBe(true);
  });
});

/** Two hands of which each job needs one at a time; a jig taken from the first row on. */
const jig = { id: 'j1', name: 'Jig 1', kind: 'wing', hand: 'both' as const };
const oneHand = { ...smallFloor, title: 'One hand', crew: [{ name: by, skills: ['licensed'] }], jigs: [jig] };
const jobOf = (title: string, more: object = {}) => ({ ...smallJob, title, floor: { kept: 'one-hand' }, ...more });

describe('a floor with one hand', () => {
  it('a job kept later is planned after, also before it is kept; kept anew it keeps its place', async () => {
    await post('maps', { document: smallWing, by });
    await post('floors', { document: oneHand, by });
    await post('jobs', { document: jobOf('Job A'), by });
    const draft = await post('jobs/answer', { document: jobOf('Job B'), page: 'schedule' });
    expect(draft.because).toContain('Planned after Job A: jig days and hands that it takes');
    await post('jobs', { document: jobOf('Job B'), by });
    await post('jobs', { document: jobOf('Job A', { wanted: ['look-bay'] }), by });
    const [a, b] = [await page('jobs/job-a?page=schedule'), await page('jobs/job-b?page=schedule')];
    expect(a.because).toMatch(/No other job is planned before it/);
    expect(b.because).toContain('Planned after Job A');
    const calendar = await page('calendar?floor=one-hand');
    expect([endOn(a), endOn(b)]).toEqual(['job-a', 'job-b'].map((n) => calendarEnds(calendar).get(n)));
  });
  it('begins no earlier than today; the quote counts from its own day', async () => {
    const quote = { valid_days: 30, stop_and_call_cents: 500_000 };
    await post('jobs', { document: jobOf('Job A', { quote }), by });
    const starts = async (n: string) => JSON.stringify((await page(`jobs/${n}?page=schedule&format=sheet`)).blocks);
    expect(await starts('job-a')).toContain('2026-11-25');
    expect(await starts('job-a')).not.toContain('2026-11-24');
    const ends = endOn(await page('jobs/job-b?page=schedule'));
    day = '2027-02-08';
    const [a, b] = [await page('jobs/job-a?page=schedule'), await page('jobs/job-b?page=schedule')];
    expect(endOn(a) >= day).toBe(true);
    expect(endOn(b) > ends).toBe(true);
    const calendar = await page('calendar?floor=one-hand');
    expect([endOn(a), endOn(b)]).toEqual(['job-a', 'job-b'].map((n) => calendarEnds(calendar).get(n)));
    const fields = JSON.stringify((await page('jobs/job-a?page=quote')).titleBlock);
    expect(fields).toMatch(/23 Nov(ember)? 2026/);
    expect(fields).toMatch(/23 Dec(ember)? 2026/);
    day = '2026-11-25';
  });
});
