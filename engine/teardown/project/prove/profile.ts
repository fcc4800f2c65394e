import type { Project } from '../model.ts';
import { packedOf } from '../schedule/packed.ts';
import { type Bounds, BY_TIME } from './bounds.ts';

/**
 * The time-table: between its latest start and its earliest end a job is certainly done. What all certainly take is kept
 * for every unit of time; a job that does not fit beside it is moved on.
 */
export class Profile {
  private readonly words: number;
  private readonly free: Int32Array;
  private readonly guards: Int32Array;
  private readonly needs: Int32Array;
  private readonly certainFrom: Int32Array;
  private readonly certainTo: Int32Array;
  private readonly takes: Uint8Array;
  /** The unit of time at which more is taken than there is. */
  clash = -1;
  /** Jobs that were looked at: the measure of effort. */
  steps = 0;

  constructor(
    private readonly project: Project,
    private readonly bounds: Bounds,
    horizon: number,
  ) {
    const packed = packedOf(project);
    this.words = packed.words;
    this.guards = packed.guards;
    this.needs = packed.demands;
    this.free = new Int32Array((horizon + 1) * packed.words);
    for (let t = 0; t <= horizon; t++) this.free.set(packed.free, t * packed.words);
    this.certainFrom = new Int32Array(project.count);
    this.certainTo = new Int32Array(project.count);
    this.takes = Uint8Array.from(project.durations, (d, j) =>
      d > 0 && packed.demands.subarray(j * packed.words, (j + 1) * packed.words).some((r) => r !== 0) ? 1 : 0,
    );
  }

  /** Brings what job j certainly takes up to its bounds. Returns 1 where it grew, 0 where not, -1 where that clashes. */
  sync(j: number): number {
    if (!this.takes[j]) return 0;
    const { least } = this.bounds;
    const from = -least[2 * j + 1]!;
    const to = least[2 * j]! + this.project.durations[j]!;
    const [oldFrom, oldTo] = [this.certainFrom[j]!, this.certainTo[j]!];
    if (from >= to) {
      this.shift(j, oldFrom, oldTo, 1);
      this.certainFrom[j] = 0;
      this.certainTo[j] = 0;
      return 0;
    }
    this.certainFrom[j] = from;
    this.certainTo[j] = to;
    if (oldFrom >= oldTo) return this.shift(j, from, to, -1);
    this.shift(j, oldFrom, Math.min(from, oldTo), 1);
    this.shift(j, Math.max(to, oldFrom), oldTo, 1);
    const left = this.shift(j, from, Math.min(oldFrom, to), -1);
    const right = this.shift(j, Math.max(oldTo, from), to, -1);
    return left < 0 || right < 0 ? -1 : left | right;
  }

  private shift(j: number, from: number, to: number, sign: number): number {
    const { words, free, guards } = this;
    let result = 0;
    for (let t = from; t < to; t++) {
      if (result === 0) result = 1;
      for (let w = 0; w < words; w++) {
        const p = t * words + w;
        free[p]! += sign * this.needs[j * words + w]!;
        if (sign < 0 && (free[p]! & guards[w]!) !== guards[w]!) {
          this.clash = t;
          result = -1;
        }
      }
    }
    return result;
  }

  private fits(j: number, t: number): boolean {
    const { words, free, guards, needs } = this;
    if (words === 1) return ((free[t]! - needs[j]!) & guards[0]!) === guards[0]!;
    for (let w = 0; w < words; w++)
      if (((free[t * words + w]! - needs[j * words + w]!) & guards[w]!) !== guards[w]!) return false;
    return true;
  }

  /** Moves the bounds of job j away from what is full. False where no start is left. */
  filter(j: number): boolean {
    if (!this.takes[j]) return true;
    this.steps++;
    const { bounds } = this;
    const { least } = bounds;
    const d = this.project.durations[j]!;
    let early = least[2 * j]!;
    let late = -least[2 * j + 1]!;
    if (early === late) return true;
    for (let t = Math.min(early + d, late) - 1; t >= early; t--)
      if (!this.fits(j, t)) {
        if (!bounds.raise(2 * j, t + 1, t * 4 + BY_TIME)) return false;
        early = t + 1;
        t = Math.min(early + d, late);
      }
    for (let t = Math.max(late, early + d); t < late + d; t++)
      if (!this.fits(j, t)) {
        if (!bounds.raise(2 * j + 1, d - t, t * 4 + BY_TIME)) return false;
        late = t - d;
        t = Math.max(late, early + d) - 1;
      }
    return true;
  }
}
