import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Day, directive, parseDay } from '../../engine/index.ts';
import { directives } from '../../examples/index.ts';
import { W14_1, W14_2 } from '../../examples/scenario/directives.ts';
import type { NewEntry } from '../../store/index.ts';
import { testStore } from '../../store/testing/database.ts';
import { adoption } from '../demo.ts';
import { gather } from '../desk.ts';
import { PROGRAM } from '../version.ts';
import { fleetOf } from './fleet-of.ts';
import { Keeper, watched } from './keeper.ts';
import { fleetPage } from './sheets.ts';
import { keptOf, readSummary } from './summary.ts';
import { Workshop } from './workshop.ts';

const TODAY = parseDay('2026-11-25');
const AT = '2026-11-25T10:00:00.000Z';
let test: Awaited<ReturnType<typeof testStore>>;
let today = TODAY as string;
let shops = 0;
beforeAll(async () => {
  test = await testStore();
});
afterAll(() => test.done());

const entry = (subject: string, kind: string, day: string, body: unknown, more: Partial<NewEntry> = {}): NewEntry => ({
  subject,
  kind,
  day: parseDay(day) as Day,
  order: 0,
  body,
  schema: 'record/1',
  evidence: 'copy',
  ...more,
});
const anAircraft = (n: number): NewEntry[] => [
  entry(`aircraft:${n}`, 'aircraft', '2008-04-11', {
    registration: `ZQ-A${n}`,
    type: 'Whimbrel',
    model: 'W4-T',
    serial: `06${n}0`,
    built: '2008-04-11',
  }),
  entry(`wing:${n}`, 'part', '2008-04-11', { part: 'wing', hand: 'left', built: '2008-04-11' }),
  entry(`wing:${n}`, 'fitment', '2008-04-11', { into: `aircraft:${n}`, place: 'left_wing' }, { order: 1 }),
  entry(`spar:${n}`, 'part', '2008-04-11', { part: 'inboard_spar', hand: 'left', built: '2008-04-11' }),
  entry(`spar:${n}`, 'fitment', '2008-04-11', { into: `wing:${n}`, place: 'left_inboard_spar' }, { order: 1 }),
  entry(`aircraft:${n}`, 'reading', '2025-06-01', { total_h: 1000 * n + 500, landings: 900 * n + 400 }),
];

/** A shop of three aircraft under two issues of one directive, watched by a keeper of its own. */
async function aShop() {
  const id = `k${++shops}`;
  await test.store.shops.open({ id, name: 'Kept', invented: true });
  const desk = { store: test.store, today: () => today };
  const keeper = new Keeper(desk, new Workshop(false));
  const store = watched(test.store, keeper);
  const rules = [W14_1, W14_2].map((d) => adoption(directive.readDirective(d), 'M. Orne', d.effective as Day));
  await store.log.append(id, [...rules.slice(0, 1), ...[1, 2, 3].flatMap(anAircraft)], 'test', AT);
  await keeper.settled();
  return { id, desk, keeper, store, rules };
}
/** What is stored of every aircraft, against what a fresh computation would store. */
async function differences({ id, desk }: Awaited<ReturnType<typeof aShop>>): Promise<string[]> {
  const states = await test.store.desk.list(id, { program: PROGRAM });
  const summaries = await test.store.desk.summaries(
    id,
    states.map((s) => s.aircraft),
  );
  const answers = await test.store.answers.list(id, { program: PROGRAM });
  const out: string[] = [];
  for (const a of await test.store.aircraft.list(id)) {
    const state = states.find((s) => s.aircraft === a.id);
    if (!state || state.stale) out.push(`${a.id} is not kept`);
    const g = await gather(desk, id, a.id);
    const changesOn = await test.store.desk.changesAfter(id, g.day, await test.store.aircraft.circle(id, a.id));
    const fresh = JSON.parse(JSON.stringify(keptOf(g, { entry: 0, touches: [], changesOn })));
    if (JSON.stringify(summaries.get(a.id)) !== JSON.stringify(fresh.state.summary))
      out.push(`${a.id}: another summary`);
    const mine = answers.filter((x) => (x as { aircraft?: string }).aircraft === a.id);
    const key = (x: { part: string; directive: string; issue: number; action: string }) =>
      `${x.part}|${x.directive}|${x.issue}|${x.action}`;
    const shown = (x: { result: unknown; line?: unknown }) => JSON.stringify([x.result, x.line]);
    const kept = new Map(mine.map((x) => [key(x), shown(x)]));
    for (const x of fresh.answers) if (kept.get(key(x)) !== shown(x)) out.push(`${a.id}: ${key(x)} differs`);
    if (mine.length !== fresh.answers.length) out.push(`${a.id}: ${mine.length} kept, ${fresh.answers.length} fresh`);
    if (mine.some((x) => x.stale)) out.push(`${a.id}: a kept answer is stale`);
  }
  return out;
}

const which = fc.integer({ min: 1, max: 3 });
const day = fc.constantFrom('2025-08-01', '2026-02-01', '2026-11-20');
const ruling = fc.oneof(
  fc.record({
    does: fc.constant('other' as const),
    of: fc.nat(),
    effective: day,
    models: fc.constantFrom('W4', 'W4-T', 'W4-T'),
    instead: fc.option(fc.nat(), { freq: 3 }),
  }),
  fc.record({
    does: fc.constant('other' as const),
    of: fc.nat(),
    effective: day,
    models: fc.constant('W4-T'),
    instead: fc.constant(null),
  }),
  fc.record({ does: fc.constant('withdraw' as const), of: fc.nat() }),
);
const happening = fc.oneof(
  fc.record({ does: fc.constant('reading' as const), n: which, day, more: fc.integer({ min: 1, max: 900 }) }),
  fc.record({ does: fc.constant('move' as const), n: which, to: which, day }),
  fc.record({ does: fc.constant('done' as const), n: which, day }),
  fc.record({ does: fc.constant('adopt' as const) }),
  ruling,
  fc.record({ does: fc.constant('settings' as const), soon: fc.integer({ min: 1, max: 400 }) }),
  fc.record({ does: fc.constant('correct' as const), n: which, to: which }),
  fc.record({ does: fc.constant('request' as const), n: which }),
);
type Happening = typeof happening extends fc.Arbitrary<infer T> ? T : never;

async function happen(s: Awaited<ReturnType<typeof aShop>>, h: Happening): Promise<void> {
  const put = (...entries: NewEntry[]) => s.store.log.append(s.id, entries, 'test', AT);
  switch (h.does) {
    case 'reading':
      return void (await put(
        entry(`aircraft:${h.n}`, 'reading', h.day, {
          total_h: 1000 * h.n + 500 + h.more,
          landings: 900 * h.n + 400 + h.more,
        }),
      ));
    case 'move':
      return void (await put(
        entry(`wing:${h.n}`, 'removal', h.day, {}),
        entry(`wing:${h.n}`, 'fitment', h.day, { into: `aircraft:${h.to}`, place: 'left_wing' }, { order: 1 }),
      ));
    case 'done':
      return void (await put(
        entry(`spar:${h.n}`, 'accomplished', h.day, {
          directive: 'W-14',
          issue: 1,
          action: 'first_look',
          finding: 'none',
          method: 'eddy current',
          signer: { name: 'M. Orne', certificate: 'ZQ-M-114' },
        }),
      ));
    case 'adopt':
      return void (await put(s.rules[1]!));
    case 'other': {
      // Another directive of the scenario, or a further issue of it, for these models from this day.
      const like = directives[h.of % directives.length]!;
      const known = await test.store.directives.list(s.id);
      const issue = Math.max(0, ...known.filter((d) => d.number === like.number).map((d) => d.issue)) + 1;
      const others = known.filter((d) => d.number !== like.number);
      const supersedes =
        h.instead === null || !others.length ? [] : [{ number: others[h.instead % others.length]!.number }];
      const document = {
        ...like,
        issue,
        effective: h.effective,
        affects: { ...like.affects, models: [{ model: h.models }] },
        supersedes: supersedes.length ? supersedes : undefined,
      };
      return void (await put(adoption(directive.readDirective(document), 'M. Orne', h.effective as Day)));
    }
    case 'withdraw': {
      const all = await test.store.directives.list(s.id);
      const { number, issue } = all[h.of % all.length]!;
      const body = { number, issue, because: 'x', by: 'y' };
      return void (await put(
        entry(`directive:${number}`, 'directive_withdrawn', '2026-11-20', body, { schema: 'directive-withdrawn/1' }),
      ));
    }
    case 'settings':
      return void (await put(
        entry('shop', 'settings', '2026-11-25', { policy: { soon_days: h.soon } }, { schema: 'settings/1' }),
      ));
    case 'request':
      return void (await put(
        entry(`aircraft:${h.n}`, 'request', '2026-11-25', { asks: 'reading', words: 'x', by: 'y' }),
      ));
    case 'correct': {
      const log = await test.store.log.read(s.id, { subjects: [`aircraft:${h.n}`], kinds: ['reading'], inForce: true });
      const old = log.at(-1);
      if (!old) return;
      const body = { total_h: 4000, landings: 3900 };
      return void (await put(entry(`aircraft:${h.to}`, 'reading', old.day, body, { replaces: old.number })));
    }
  }
}

describe('stored answers', () => {
  it('are what a fresh computation gives, after any sequence of entries', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(happening, { minLength: 1, maxLength: 5 }), async (all) => {
        const s = await aShop();
        for (const h of all) await happen(s, h);
        await s.keeper.settled();
        expect(await differences(s)).toEqual([]);
        await s.keeper.close();
      }),
      { numRuns: 8 },
    );
  });
  it('are that after directives come and go, of which only those are computed that changed', async () => {
    let partly = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(ruling, { minLength: 3, maxLength: 6 }), async (all) => {
        const s = await aShop();
        const run = Workshop.prototype.run;
        const counted = vi.spyOn(Workshop.prototype, 'run').mockImplementation(function (this: Workshop, task, urgent) {
          if (task.before) partly++;
          return run.call(this, task, urgent);
        });
        for (const h of all) {
          await happen(s, h);
          await s.keeper.settled();
        }
        counted.mockRestore();
        expect(await differences(s)).toEqual([]);
        await s.keeper.close();
      }),
      { numRuns: 10 },
    );
    expect(partly).toBeGreaterThan(60);
  });
  it('of an aircraft that an entry touched hold before the write is answered; others stay as they are', async () => {
    const s = await aShop();
    const before = await test.store.desk.list(s.id, { program: PROGRAM });
    await happen(s, { does: 'reading', n: 2, day: '2026-11-20', more: 100 });
    const after = await test.store.desk.list(s.id, { program: PROGRAM });
    const changed = after.filter((a) => a.entry !== before.find((b) => b.aircraft === a.aircraft)?.entry);
    expect(changed.map((a) => a.aircraft)).toEqual(['aircraft:2']);
    expect(after.some((a) => a.stale)).toBe(false);
    const kept = await test.store.desk.summaries(s.id, ['aircraft:2']);
    expect(readSummary(kept.get('aircraft:2'))?.reading?.total_s).toBe(2600 * 3600);
    await s.keeper.close();
  });
  it('that a removed part or an older issue left behind are gone', async () => {
    const s = await aShop();
    const keys = async () =>
      (await test.store.answers.list(s.id, { program: PROGRAM })).map(
        (a) => `${a.part} ${a.directive}/${a.issue} ${a.action}`,
      );
    expect((await keys()).filter((k) => k.startsWith('spar:1'))).not.toEqual([]);
    await s.store.log.append(s.id, [entry('wing:1', 'removal', '2026-11-20', { to: 'shelf' })], 'test', AT);
    expect((await keys()).filter((k) => k.startsWith('spar:1'))).toEqual([]);
    await happen(s, { does: 'adopt' });
    await s.keeper.settled();
    expect((await keys()).filter((k) => k.includes('W-14/1'))).toEqual([]);
    await s.keeper.close();
  });
  it('of another program, or a text that does not read, are computed again', async () => {
    const s = await aShop();
    await test.pool.query(
      `update desk_state set program = '9.9.9', summary = '{"sparwright":"desk/7","rows":[]}' where shop = $1 and aircraft = 'aircraft:1'`,
      [s.id],
    );
    await test.pool.query(
      `update desk_state set program = '9.9.9', summary = 'not JSON' where shop = $1 and aircraft = 'aircraft:2'`,
      [s.id],
    );
    const seen = await fleetOf(test.store, s.id, TODAY, TODAY);
    expect(seen.map((a) => a.holds)).toEqual([false, false, true]);
    s.keeper.look(s.id);
    await s.keeper.settled();
    expect(await differences(s)).toEqual([]);
    await s.keeper.close();
  });
  it('that an entry overtook while they were computed are not kept', async () => {
    const s = await aShop();
    const entryNow = await test.store.log.last(s.id);
    const kept = keptOf(await gather(s.desk, s.id, 'aircraft:1'), {
      entry: entryNow,
      touches: ['aircraft:1', 'wing:1', 'spar:1'],
      changesOn: null,
    });
    await test.store.log.append(s.id, [entry('aircraft:1', 'reading', '2026-11-20', { total_h: 1700 })], 'test', AT);
    expect(await test.store.desk.keep(s.id, kept.state, kept.answers)).toBe(false);
    expect((await fleetOf(test.store, s.id, TODAY, TODAY))[0]!.holds).toBe(false);
    await test.store.log.append(s.id, [entry('aircraft:2', 'reading', '2026-11-20', { total_h: 2700 })], 'test', AT);
    const other = { ...kept.state, aircraft: 'aircraft:3', touches: ['aircraft:3'] };
    expect(await test.store.desk.keep(s.id, other, [])).toBe(true);
    await s.keeper.close();
  });
  it('follow the day: what comes into force on a later day makes them open until it is computed', async () => {
    const s = await aShop();
    await s.store.log.append(s.id, [entry('aircraft:1', 'reading', '2026-12-01', { total_h: 1900 })], 'test', AT);
    expect((await fleetOf(test.store, s.id, TODAY, TODAY))[0]!.holds).toBe(true);
    const later = parseDay('2026-12-02');
    expect((await fleetOf(test.store, s.id, later, later))[0]!.holds).toBe(false);
    today = later;
    s.keeper.look(s.id);
    await s.keeper.settled();
    const [one] = await fleetOf(test.store, s.id, later, later);
    expect([one!.holds, one!.asOf, one!.reading?.total_s]).toEqual([true, later, 1900 * 3600]);
    expect(await differences(s)).toEqual([]);
    today = TODAY;
    await s.keeper.close();
  });
  it('parts on the shelf stand below the aircraft, what may no longer be fitted first; none that is fitted or scrapped', async () => {
    const s = await aShop();
    const table = async () =>
      (await fleetPage(test.store, s.id, TODAY, TODAY)).blocks.find((b) => b.title === 'On the shelf');
    expect(await table()).toBeUndefined();
    const bans = { ...W14_1, issue: 3, actions: W14_1.actions.map((a) => ({ ...a, forbids_fitting: ['S-100'] })) };
    const spare = (id: string, number: string) =>
      entry(id, 'part', '2008-04-11', { part: 'inboard_spar', hand: 'left', built: '2008-04-11', part_number: number });
    await s.store.log.append(
      s.id,
      [
        adoption(directive.readDirective(bans), 'M. Orne', '2026-11-20' as Day),
        spare('spar:good', 'S-200'),
        spare('spar:banned', 'S-100'),
        entry('spar:1', 'removal', '2026-11-20', { to: 'scrap' }),
        entry('wing:2', 'removal', '2026-11-20', { to: 'shelf' }),
      ],
      'test',
      AT,
    );
    await s.keeper.settled();
    await vi.waitFor(async () => {
      const found = await table();
      if (found?.block !== 'table') throw new Error('no table');
      const ids = found.rows.map((r) => r.id.split(' ')[0]!);
      expect(found.rows[0]!.cells.fitting).toMatchObject({
        text: expect.stringContaining('S-100 may no longer be fitted'),
      });
      expect(ids[0]).toBe('spar:banned');
      expect([...new Set(ids)].sort()).toEqual(['spar:2', 'spar:banned', 'spar:good', 'wing:2']);
    });
    await s.keeper.close();
  });
  it('a fault while computing one aircraft is a finding on its row, and treats it as due', async () => {
    const s = await aShop();
    const broken = new Workshop(false);
    broken.run = async (task) => {
      if (task.aircraft === 'aircraft:2') throw new RangeError('planted');
      return new Workshop(false).run(task);
    };
    await test.pool.query('update desk_state set stale = true where shop = $1', [s.id]);
    const stderr = process.stderr.write;
    process.stderr.write = () => true;
    const keeper = new Keeper(s.desk, broken);
    keeper.look(s.id);
    await keeper.settled();
    process.stderr.write = stderr;
    const all = await fleetOf(test.store, s.id, TODAY, TODAY);
    expect(all).toHaveLength(3);
    expect(all.map((a) => a.notComputed.length)).toEqual([0, 1, 0]);
    expect(all[1]!.notComputed[0]).toMatch(/could not be computed/);
    expect(all[1]!.lines.length).toBeGreaterThan(0);
    await keeper.close();

    const again = new Keeper(s.desk, new Workshop(false));
    again.look(s.id);
    await again.settled();
    expect(await differences(s)).toEqual([]);
    await again.close();
    await s.keeper.close();
  });
  it('a fault is tried again after the next entry, whatever aircraft that is of, and not without one', async () => {
    const s = await aShop();
    const broken = new Workshop(false);
    let whole = false;
    let runs = 0;
    broken.run = async (task) => {
      if (task.aircraft === 'aircraft:2') runs++;
      if (task.aircraft === 'aircraft:2' && !whole) throw new RangeError('planted');
      return new Workshop(false).run(task);
    };
    await test.pool.query('update desk_state set stale = true where shop = $1', [s.id]);
    const stderr = process.stderr.write;
    process.stderr.write = () => true;
    const keeper = new Keeper(s.desk, broken);
    for (let i = 0; i < 3; i++) {
      keeper.look(s.id);
      await keeper.settled();
    }
    process.stderr.write = stderr;
    expect(runs).toBe(1);
    whole = true;
    await watched(test.store, keeper).log.append(
      s.id,
      [entry('aircraft:1', 'reading', '2026-11-20', { total_h: 1700 })],
      'test',
      AT,
    );
    await keeper.settled();
    expect(await differences(s)).toEqual([]);
    await keeper.close();
    await s.keeper.close();
  });
});
