import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type TestStore, testStore } from './testing/database.ts';
import { entry } from './testing/entries.ts';

let t: TestStore;
let shops = 0;
beforeAll(async () => {
  t = await testStore();
});
afterAll(() => t.done());

const instant = fc.integer({ min: 0, max: 8 * 24 }).map((h) => new Date(Date.UTC(2026, 2, 1, h)).toISOString());
const DAYS = ['2026-02-28', '2026-03-01', '2026-03-03', '2026-03-05', '2026-03-09', '2026-03-20'];

it('whatever the clock does: numbers keep the order of recording, a day stands for the beginning recorded by then', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(instant, fc.integer({ min: 1, max: 3 })), { minLength: 1, maxLength: 6 }),
      async (all) => {
        const shop = `clock-${shops++}`;
        await t.store.shops.open({ id: shop, name: 'Clock', invented: true });
        const recorded: string[] = [];
        for (const [at, n] of all) {
          const entries = Array.from({ length: n }, (_, i) =>
            entry('aircraft:1', 'reading', '2020-01-01', { total_h: recorded.length + i }),
          );
          await t.store.log.append(shop, entries, 'me', at);
          recorded.push(...entries.map(() => at));
        }
        const log = await t.store.log.read(shop);
        expect(log.map((e) => (e.body as { total_h: number }).total_h)).toEqual(recorded.map((_, i) => i));
        expect(log.map((e) => e.recordedAt)).toEqual(recorded); // as the clock said: nothing is made prettier
        for (const day of DAYS) {
          const later = recorded.findIndex((at) => at.slice(0, 10) > day);
          expect(await t.store.log.lastKnownOn(shop, day)).toBe(later < 0 ? recorded.length : later);
        }
        expect(await t.store.log.latestRecording(shop)).toBe([...recorded].sort().at(-1));
        expect(await t.store.log.verify(shop)).toEqual([]);
      },
    ),
    { numRuns: 25 },
  );
});
