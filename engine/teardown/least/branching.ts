import { safeBound } from './safe-bound.ts';
import type { Simplex } from './simplex.ts';

/** What a search lends for trying: setting a thing, and taking back what was set. */
export interface Trying {
  set(j: number, value: 0 | 1): void;
  mark(): number;
  back(mark: number): void;
  /** Beyond it nothing better can lie. */
  until(): number;
  goOn(): boolean;
}

/** Which thing to branch on: that whose both sides lift the bound most, tried at first, later by what was seen of it. */
export class Branching {
  private readonly simplex: Simplex;
  private readonly trying: Trying;
  private readonly up: Float64Array;
  private readonly down: Float64Array;
  private readonly tries: Float64Array;

  constructor(simplex: Simplex, trying: Trying) {
    this.simplex = simplex;
    this.trying = trying;
    this.up = new Float64Array(simplex.things);
    this.down = new Float64Array(simplex.things);
    this.tries = new Float64Array(simplex.things);
  }

  /** A thing that is neither in nor out, or -1. */
  choose(bound: number): number {
    const things = this.simplex.things;
    const x = Float64Array.from({ length: things }, (_, j) => this.simplex.value[j]!);
    const list: { j: number; score: number }[] = [];
    let [sum, count] = [0, 0];
    for (let j = 0; j < things; j++)
      if (this.tries[j]! > 0) [sum, count] = [sum + this.up[j]! / this.tries[j]!, count + 1];
    const mean = count ? sum / count : 1;
    for (let j = 0; j < things; j++) {
      const f = x[j]!;
      if (f < 1e-5 || f > 1 - 1e-5) continue;
      const u = this.tries[j]! ? this.up[j]! / this.tries[j]! : mean;
      const d = this.tries[j]! ? this.down[j]! / this.tries[j]! : mean;
      list.push({ j, score: Math.max(1e-6, u * (1 - f)) * Math.max(1e-6, d * f) * (1 + 0.1 * Math.min(f, 1 - f)) });
    }
    list.sort((a, b) => b.score - a.score || a.j - b.j);
    let [best, most, since] = [-1, -1, 0];
    for (const { j, score } of list.slice(0, 12)) {
      if (this.tries[j]! >= 3) {
        if (score > most) [best, most] = [j, score];
        continue;
      }
      if (since++ > 6 || !this.trying.goOn()) break;
      const f = x[j]!;
      const gains = [0, 1].map((v) => {
        const mark = this.trying.mark();
        this.trying.set(j, v as 0 | 1);
        const outcome = this.simplex.solve(this.trying.until(), 30, () => true);
        const gain =
          outcome === 'impossible' || outcome === 'above'
            ? Math.max(1, this.trying.until() - bound)
            : Math.max(0, safeBound(this.simplex).bound - bound);
        this.trying.back(mark);
        return gain;
      }) as [number, number];
      this.down[j]! += gains[0] / f;
      this.up[j]! += gains[1] / (1 - f);
      this.tries[j]!++;
      const s = Math.max(1e-6, gains[0]) * Math.max(1e-6, gains[1]);
      if (s > most) [best, most, since] = [j, s, 0];
    }
    if (best < 0 && list.length) best = list[0]!.j;
    return best;
  }
}
