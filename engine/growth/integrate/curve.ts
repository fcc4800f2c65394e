import type { CrackForm, GrowthPoint } from '../model.ts';
import type { Stretch } from './model.ts';
import { sizeOf } from './path.ts';
import type { State } from './step.ts';

/** When a state is reached, by the third component of it. */
type Clock = (third: number) => { readonly hours: number; readonly cycles: number };

/** Points of a curve from the steps of its stretches, with K under the highest stress. */
export function pointsAlong(stretches: readonly Stretch[], highest_MPa: number, clock: Clock) {
  const at = (form: CrackForm, state: State): GrowthPoint => {
    const { hours, cycles } = clock(state[2]);
    return pointAt(form, [state[0], state[1], hours], highest_MPa, cycles);
  };
  const all = (least: number): GrowthPoint[] => {
    const span = stretches.reduce((t, s) => t + s.steps.at(-1)!.along, 0);
    return stretches.flatMap(({ form, steps }) =>
      steps.flatMap((to, i) => {
        const from = steps[i - 1];
        if (!from) return [at(form, to.at)];
        const parts = Math.max(1, Math.ceil(((to.along - from.along) / span) * least));
        return Array.from({ length: parts }, (_, j) =>
          at(form, j === parts - 1 ? to.at : between(from, to, (j + 1) / parts)),
        );
      }),
    );
  };
  return { at, all };
}

export function pointAt(form: CrackForm, state: State, highest_MPa: number, cycles: number): GrowthPoint {
  const size = sizeOf(form, state);
  const k = form.outside(size) === null ? form.k(size) : null;
  const stress = Math.max(0, highest_MPa);
  return {
    hours: state[2],
    cycles,
    c_mm: size.c_mm,
    a_mm: size.a_mm ?? null,
    kc_MPa_sqrt_m: k ? Math.max(0, k.c) * stress : 0,
    ka_MPa_sqrt_m: k && k.a !== null ? Math.max(0, k.a) * stress : null,
  };
}

type At = Stretch['steps'][number];
/** Cubic between two steps through both values and slopes. */
function between(from: At, to: At, u: number): State {
  const over = to.along - from.along;
  const component = (i: 0 | 1 | 2) => {
    const [y0, y1, d0, d1] = [from.at[i], to.at[i], from.slope[i] * over, to.slope[i] * over];
    return y0 + u * (d0 + u * (3 * (y1 - y0) - 2 * d0 - d1 + u * (2 * (y0 - y1) + d0 + d1)));
  };
  return [component(0), component(1), component(2)];
}
