import { afterEach, describe, expect, it, vi } from 'vitest';
import { growth, isRefusal, Refusal } from '../../engine/index.ts';
import { growthExample } from '../../examples/index.ts';
import { computePart, type WorkTask } from './part.ts';
import { type Asked, Works } from './works.ts';

const document = growth.zGrowthDocument.parse({ ...growthExample, chance: { ...growthExample.chance!, lives: 400 } });
const task: growth.ChanceTask = { document, programme: { first_h: 3000, repeat_h: 1000 }, critical_c_mm: 12 };
const asked = (items = 400): Asked<'growth chance', growth.ChanceAnswer> => ({
  task: 'growth chance',
  input: { ...task, document: { ...document, chance: { ...document.chance!, lives: items } } },
  seed: document.chance!.seed,
  items,
  reduce: (parts) =>
    growth.chanceFrom(
      growth.prepareChance({ ...task, document: { ...document, chance: { ...document.chance!, lives: items } } }),
      parts,
    ),
});
const soon = () => new Promise((r) => setImmediate(r));
/** Hands that let a test hold the parts. */
class Held {
  readonly lanes = 2;
  readonly seen: WorkTask[] = [];
  private readonly waiting: (() => void)[] = [];
  async compute(t: WorkTask) {
    this.seen.push(t);
    await new Promise<void>((r) => this.waiting.push(r));
    return computePart(t);
  }
  async close() {}
  async release(n: number) {
    for (let i = 0; i < n; i++) {
      this.waiting.shift()?.();
      for (let k = 0; k < 4; k++) await soon();
    }
  }
}
const quiet = { lanes: 1, compute: async (t: WorkTask) => computePart(t), close: async () => {} };
const failing = (error: unknown) => ({ ...quiet, compute: async () => Promise.reject(error) });
afterEach(() => {
  vi.restoreAllMocks();
});
const listening = () => vi.spyOn(process.stderr, 'write').mockImplementation(() => true);

describe('a long work', () => {
  it('cut into parts gives what computing all at once gives', async () => {
    const works = new Works(quiet);
    const { result, done, of } = await works.ended(works.begin(asked()));
    const prepared = growth.prepareChance(task);
    expect(result).toEqual(growth.chanceFrom(prepared, [growth.livesOf(prepared, { from: 0, to: 400 })]));
    expect([done, of]).toEqual([400, 400]);
  });

  it('says how far it is, rising to the end, two parts at a time', async () => {
    const hands = new Held();
    const works = new Works(hands);
    const id = works.begin(asked());
    const seen: number[] = [];
    for (let i = 0; i < 20; i++) {
      await hands.release(1);
      seen.push(works.look(id).done);
      if (i < 15) expect(hands.seen.length - seen.at(-1)! / 20).toBe(2);
    }
    expect(seen).toEqual(Array.from({ length: 20 }, (_, i) => (i + 1) * 20));
    expect((await works.ended(id)).result).toBeDefined();
    expect(new Set(hands.seen.map((t) => t.hash)).size).toBe(1);
    expect(hands.seen.map((t) => [t.from, t.to])).toEqual(Array.from({ length: 20 }, (_, i) => [i * 20, i * 20 + 20]));
  });

  it('stopped, begins no more parts and is not there any more', async () => {
    const hands = new Held();
    const works = new Works(hands);
    const id = works.begin(asked());
    await hands.release(3);
    works.stop(id);
    const begun = hands.seen.length;
    await hands.release(10);
    expect(hands.seen.length).toBe(begun);
    expect(() => works.look(id)).toThrow(Refusal);
  });

  it('a refusal in a part is the answer', async () => {
    const works = new Works(quiet);
    const { detection } = document.chance!;
    const bad = { ...document.chance!, lives: 400, detection: { ...detection!, a50_mm: 3, a90_mm: 2 } };
    const seen = await works.ended(
      works.begin({ ...asked(), input: { ...task, document: { ...document, chance: bad } } }),
    );
    expect(seen.refusal?.code).toBe('growth.detection-reversed');
    expect(seen.result).toBeUndefined();
  });

  it('a fault is told in lines, and its details go to the output', async () => {
    const said = listening();
    const works = new Works(failing(new Error('the thread is gone')));
    const seen = await works.ended(works.begin(asked()));
    expect(seen.refusal?.code).toBe('server.fault');
    expect(seen.refusal?.detail.given).toMatch(/fault of its own/);
    expect(String(said.mock.calls[0]![0])).toContain('the thread is gone');
  });

  it('a program that closes tells those who still look', async () => {
    const said = listening();
    const hands = new Held();
    const works = new Works({
      lanes: 2,
      compute: (t) => hands.compute(t),
      close: async () => void hands.release(2),
    });
    const id = works.begin(asked());
    await hands.release(1);
    await works.close();
    const { refusal } = works.look(id);
    expect(refusal?.code).toBe('server.fault');
    expect(refusal?.detail.given).toMatch(/closing/);
    expect(said).not.toHaveBeenCalled();
  });

  it('only a few are kept: the oldest is stopped and forgotten', async () => {
    const works = new Works(quiet);
    const all = Array.from({ length: 10 }, () => works.begin(asked(20)));
    for (const id of all.slice(0, 2)) expect(() => works.look(id)).toThrow(/under way/);
    for (const id of all.slice(2)) expect((await works.ended(id)).result).toBeDefined();
  });

  it('a number that was never given is refused', () => {
    let met: unknown;
    try {
      new Works(quiet).look('none');
    } catch (e) {
      met = e;
    }
    expect(isRefusal(met) && met.code).toBe('server.not-found');
  });
});
