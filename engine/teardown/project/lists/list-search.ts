import { drawFrom } from './draw.ts';
import type { ListQuestion } from './question.ts';
import { variation } from './vary.ts';

/** A search over lists that can be taken up again. */
export interface ListSearch {
  /** Decodes so many further lists; ends early at the goal or when told to. */
  run(effort: number, goal: number): void;
  /** Brings a list from elsewhere, and what it is worth; it joins the population in place of its worst. */
  offer(list: ArrayLike<number>, value: number): void;
  /** Best so far; the same array all the time. */
  readonly list: Int32Array;
  readonly makespan: number;
  readonly decoded: number;
}

const SMALL = 100;
const LARGE = 400;
/** Children without a better one, in populations, after which a new population, twice as large, is begun. */
const PATIENCE = 40;
const MUTATION = 0.2;
/** Decoded lists between two questions whether to go on. */
const PACE = 16;

export function listSearch(question: Omit<ListQuestion, 'effort' | 'bound'>): ListSearch {
  const { count, before, decode } = question;
  const draw = drawFrom(question.seed, 1);
  const vary = variation(count, before, question.urgency ?? null, draw);
  const lists = Array.from({ length: LARGE }, () => new Int32Array(count));
  const values = new Float64Array(LARGE);
  let population = SMALL;
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
    const a = draw.below(population);
    const b = draw.below(population);
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
    for (let p = 0; p < population; p++) {
      if (values[p] !== value) continue;
      const other = lists[p]!;
      let i = 0;
      while (i < count && other[i] === list[i]) i++;
      if (i === count) return true;
    }
    return false;
  };
  /** Hands back the array whose place is taken. */
  const replace = (at: number, list: Int32Array<ArrayBuffer>, value: number): Int32Array<ArrayBuffer> => {
    const spare = lists[at]!;
    lists[at] = list;
    values[at] = value;
    return spare;
  };
  /** In place of the worst. */
  const settle = (list: Int32Array<ArrayBuffer>, value: number): void => {
    if (known(list, value)) return;
    let worst = 0;
    for (let p = 1; p < population; p++) if (values[p]! > values[worst]!) worst = p;
    if (value <= values[worst]!) replace(worst, list, value);
  };
  /** A child that is no worse takes the place of its worse parent, so that the population stays varied. */
  const breed = () => {
    const father = pick();
    let mother = pick();
    if (mother === father) mother = (mother + 1) % population;
    vary.cross(lists[father]!, lists[mother]!, child);
    vary.mutate(child, MUTATION);
    const value = judge(child);
    const worse = values[mother]! > values[father]! ? mother : father;
    if (value <= values[worse]! && !known(child, value)) child = replace(worse, child, value);
  };
  return {
    run(effort, goal) {
      const until = decoded + effort;
      let pace = 0;
      while (decoded < until && makespan > goal) {
        if (++pace % PACE === 0 && question.keepGoing && !question.keepGoing()) return;
        if (filled < population) fill();
        else if (quiet > PATIENCE * population) {
          population = Math.min(2 * population, LARGE);
          filled = 0;
          quiet = 0;
          round = Number.POSITIVE_INFINITY;
        } else breed();
      }
    },
    offer(list, value) {
      if (value < makespan) {
        makespan = value;
        best.set(list);
      }
      if (filled < population) offered.push(Int32Array.from(list));
      else settle(Int32Array.from(list), value);
    },
    list: best,
    get makespan() {
      return makespan;
    },
    get decoded() {
      return decoded;
    },
  };
}
