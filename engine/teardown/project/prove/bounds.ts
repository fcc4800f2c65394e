/**
 * Earliest and latest starts with the way that led to them. Every job has two figures that only rise: 2j is its
 * earliest start, 2j + 1 its latest start with the sign turned, so that `x ^ 1` is the other side. "x is at least v" is
 * the only kind of statement here; its contrary is "x ^ 1 is at least 1 - v".
 */
export class Bounds {
  readonly least: Int32Array;
  readonly trailOf: Int32Array;
  readonly trailOld: Int32Array;
  readonly trailBecause: Int32Array;
  top = 0;
  level = 0;
  /** Where on the trail a level begins. */
  readonly begins: number[] = [0];
  /** The figures at the beginning of a level; of level 1 those that always hold. */
  readonly at: Int32Array[] = [];

  constructor(least: Int32Array, room: number) {
    this.least = least;
    this.trailOf = new Int32Array(room);
    this.trailOld = new Int32Array(room);
    this.trailBecause = new Int32Array(room);
    this.at.push(least.slice(), least.slice());
  }

  /** False where no start is left: the statement stands on the trail nevertheless. */
  raise(x: number, value: number, because: number): boolean {
    const { least } = this;
    const old = least[x]!;
    if (value <= old) return true;
    const { top } = this;
    this.trailOf[top] = x;
    this.trailOld[top] = old;
    this.trailBecause[top] = because;
    this.top = top + 1;
    least[x] = value;
    return value + least[x ^ 1]! <= 0;
  }

  deeper(): void {
    this.level++;
    this.begins[this.level] = this.top;
    let at = this.at[this.level];
    if (!at) {
      at = this.least.slice();
      this.at[this.level] = at;
    } else at.set(this.least);
  }

  /** What holds now holds always. Only at level 0. */
  settle(): void {
    this.top = 0;
    this.at[0]!.set(this.least);
    this.at[1]!.set(this.least);
  }

  /** Back to the state at the end of a level; `undone` hears of every figure that falls. */
  back(level: number, undone: (x: number) => void): void {
    if (level >= this.level) return;
    const to = this.begins[level + 1]!;
    while (this.top > to) {
      this.top--;
      const x = this.trailOf[this.top]!;
      this.least[x] = this.trailOld[this.top]!;
      undone(x);
    }
    this.level = level;
  }

  /** The level in which "x is at least v" became true: 0 where it always holds. */
  levelOf(x: number, value: number, from: number): number {
    let l = from;
    while (l > 0 && this.at[l]![x]! >= value) l--;
    return l;
  }
}

/** Why a figure rose, packed into one: chosen, through a wait, by what is taken at a time, by something learned. */
export const CHOSEN = 0;
export const BY_WAIT = 1;
export const BY_TIME = 2;
export const BY_CLAUSE = 3;
