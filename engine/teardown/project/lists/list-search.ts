import { drawFrom } from './draw.ts';
import type { ListQuestion } from './search-lists.ts';
import { variation } from './vary.ts';

/** A search over lists that can be taken up again. */
export interface ListSearch {
  /** Decodes so many further lists; ends early at the goal or when told to. */
  run(effort: number, goal: number): void;
  /** Brings a list from elsewhere. */
  offer(list: ArrayLike<number>): void;
  /** Best so far; the same array all the time. */
  readonly list: Int32Array;
  readonly makespan: number;
  readonly decoded: number;
}

const POPULATION = 50;
/** Children without a better best, in populations, after which a new population is begun. */
const PATIENCE = 60;
const MUTATION = 0.05;
/** Decoded lists between two questions whether to go on. */
const PACE = 16;

export function listSearch(question: Omit<ListQuestion, 'effort' | 'bound'>): ListSearch {
  const { count, before, decode } = question;
  const draw = drawFrom(question.seed, 1);
  const vary = variation(count, before, question.urgency ?? null, draw);
  const lists = Array.from({ length: POPULATION }, () => new Int32Array(count));
  const values = new Float64Array(POPULATION);
  let child = new Int32Array(count);
  const best = new Int32Array(count);
  const offered = (question.first ?? []).map((l) => Int32Array.from(l));
  let makespan = Number.POSITIVE_INFINITY;
  let decoded = 0;
  let filled = 0;
  let quiet = 0;
  let round = Number.POSITIVE_INFINITY;

  const judge = (list: Int32Array): number => {
    const value = decode(list);
    decoded++;
    if (value < makespan) {
      makespan = value;
      best.set(list);
      question.onBetter?.(value, best.slice());
    }
    if (value < round) {
      round = value;
      quiet = 0;
    } else quiet++;
    return value;
  };
  const pick = (): number => {
    const a = draw.below(POPULATION);
    const b = draw.below(POPULATION);
    return values[b]! < values[a]! ? b : a;
  };
  const fill = () => {
    const list = lists[filled]!;
    const given = offered.pop();
    if (given) list.set(given);
    else vary.sample(list);
    values[filled++] = judge(list);
  };
  const known = (list: Int32Array, value: number): boolean => {
    for (let p = 0; p < POPULATION; p++) {
      if (values[p] !== value) continue;
      const other = lists[p]!;
      let i = 0;
      while (i < count && other[i] === list[i]) i++;
      if (i === count) return true;
    }
    return false;
  };
  const breed = () => {
    const father = pick();
    let mother = pick();
    if (mother === father) mother = (mother + 1) % POPULATION;
    vary.cross(lists[father]!, lists[mother]!, child);
    vary.mutate(child, MUTATION);
    const value = judge(child);
    if (known(child, value)) return;
    let worst = draw.below(POPULATION);
    for (let p = 0; p < POPULATION; p++) if (values[p]! > values[worst]!) worst = p;
    if (value > values[worst]!) return;
    const spare = lists[worst]!;
    lists[worst] = child;
    values[worst] = value;
    child = spare;
  };
  return {
    run(effort, goal) {
      const until = decoded + effort;
      let pace = 0;
      while (decoded < until && makespan > goal) {
        if (++pace % PACE === 0 && question.keepGoing && !question.keepGoing()) return;
        if (filled < POPULATION) fill();
        else if (quiet > PATIENCE * POPULATION) {
          filled = 0;
          quiet = 0;
          round = Number.POSITIVE_INFINITY;
        } else breed();
      }
    },
    offer: (list) => void offered.push(Int32Array.from(list)),
    list: best,
    get makespan() {
      return makespan;
    },
    get decoded() {
      return decoded;
    },
  };
}
