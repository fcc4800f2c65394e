import { afterAll, beforeAll, expect, it } from 'vitest';
import { testStore } from '../store/testing/database.ts';
import { openDemo } from './demo.ts';
import { type Desk, read } from './desk.ts';
import { newEntries } from './entries.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let desk: Desk;
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
  desk = { store: test.store, today: () => '2026-11-25' };
});
afterAll(() => test.done());

const note = async (subject: string, day: string, replaces?: number) => {
  const event = { id: 'x', subject, kind: 'event', day, evidence: 'seen', body: { event: 'hard_landing' } };
  const [n] = await test.store.log.append(
    'demo',
    newEntries([{ ...event, ...(replaces ? { replaces: String(replaces) } : {}) }]),
    'M. Orne',
    '2026-11-25T10:00:00.000Z',
  );
  return n!;
};
const has = async (aircraft: string, n: number, day = '2026-11-25') =>
  (await read(desk, 'demo', aircraft, { day })).model.entries.some((e) => e.id === String(n));

it('an entry written to the wrong aircraft stands in the right one only, through any number of corrections', async () => {
  const wrong = await note('aircraft:0612', '2026-05-01');
  expect(await has('aircraft:0612', wrong)).toBe(true);
  const again = await note('aircraft:0612', '2026-05-02', wrong);
  const right = await note('aircraft:0702', '2026-05-02', again);
  for (const n of [wrong, again, right]) expect(await has('aircraft:0612', n)).toBe(false);
  expect(await has('aircraft:0702', right)).toBe(true);
});
it('on a past day, an entry that was corrected to a later day is not there', async () => {
  const wrong = await note('aircraft:0612', '2026-03-01');
  const right = await note('aircraft:0612', '2026-08-01', wrong);
  for (const n of [wrong, right]) expect(await has('aircraft:0612', n, '2026-06-01')).toBe(false);
  expect(await has('aircraft:0612', right)).toBe(true);
});
