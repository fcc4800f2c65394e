/** Which statement to choose next: by how often, and how lately, it took part in a contradiction. */
export interface Weights {
  /** "x is at least value" took part. */
  noted(x: number, value: number): void;
  /** What was noted before counts a little less from now on. */
  fade(): void;
  /** The statement to try, towards the best schedule known; null where every start is settled. The same object all the time. */
  next(least: Int32Array): { readonly x: number; readonly value: number } | null;
}

const FADE = 0.95;

/** @param best starts of the best schedule known; read anew at every choice */
export function weights(count: number, horizon: number, best: Int32Array): Weights {
  const wide = horizon + 2;
  /** Of "job j starts at t or before". */
  const weight = new Float64Array(count * wide);
  const choice = { x: 0, value: 0 };
  let unit = 1;
  return {
    noted(x, value) {
      const j = x >> 1;
      const t = x & 1 ? -value : value - 1;
      if (j < count && t >= 0 && t < wide) weight[j * wide + t]! += unit;
    },
    fade() {
      unit /= FADE;
      if (unit < 1e100) return;
      for (let i = 0; i < weight.length; i++) weight[i]! *= 1e-100;
      unit *= 1e-100;
    },
    next(least) {
      let job = -1;
      let time = 0;
      let most = -1;
      let first = -1;
      for (let j = 0; j < count; j++) {
        const from = least[2 * j]!;
        const to = -least[2 * j + 1]!;
        if (from >= to) continue;
        if (first < 0 || from < least[2 * first]! || (from === least[2 * first]! && to < -least[2 * first + 1]!))
          first = j;
        for (let t = from, p = j * wide + from; t < to; t++, p++)
          if (weight[p]! > most) {
            most = weight[p]!;
            job = j;
            time = t;
          }
      }
      if (first < 0) return null;
      if (most <= 0) {
        job = first;
        time = least[2 * first]!;
      }
      const early = most <= 0 || best[job]! <= time;
      choice.x = 2 * job + (early ? 1 : 0);
      choice.value = early ? -time : time + 1;
      return choice;
    },
  };
}
