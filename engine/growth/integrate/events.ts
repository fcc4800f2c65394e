import type { CrackForm, EndOfGrowth } from '../model.ts';
import type { Until } from './model.ts';
import { deepestOf, sizeOf } from './path.ts';
import { type Slope, type State, type Stepped, step } from './step.ts';

/** What ends a stretch: `left` is above zero before it. */
export interface Event {
  readonly ended: EndOfGrowth | 'through';
  readonly left: (at: State) => number;
  /** Lays a state that stands on the event to rounding onto it. */
  readonly onto?: (at: State) => State;
}
export interface Met {
  readonly onto: (at: State) => State;
  readonly ended: Event['ended'];
  readonly over: number;
  readonly step: Stepped;
}

export function eventsOf(form: CrackForm, until: Until, perHour: number): Event[] {
  const { margin, c_mm, cycles } = until;
  const events: Event[] = [];
  if (margin) events.push({ ended: 'critical', left: (at) => margin(form, sizeOf(form, at)) });
  if (c_mm !== undefined)
    events.push({ ended: 'asked size', left: (at) => 1 - at[0] / c_mm, onto: ([, a, h]) => [c_mm, a, h] });
  if (cycles !== undefined) events.push({ ended: 'asked cycles', left: (at) => 1 - (at[2] * perHour) / cycles });
  if (form.tips === 2 && form.through) {
    const deepest = deepestOf(form);
    events.push({ ended: 'through', left: (at) => 1 - at[1] / deepest, onto: ([c, , h]) => [c, deepest, h] });
  }
  return events;
}

const CLOSE = 1e-12;
const TRIES = 60;

/** The first of the events within a step, and the shorter step that ends on it; null where none is met. */
export function firstEvent(
  events: readonly Event[],
  last: { readonly at: State; readonly slope: State },
  whole: Stepped,
  over: number,
  slopeAt: (at: State) => Slope,
): Met | null {
  let met: Met | null = null;
  for (const event of events) {
    const end: { over: number; step: Stepped } = met ?? { over, step: whole };
    if (event.left(end.step.to) > 0) continue;
    met = { ended: event.ended, onto: event.onto ?? ((at) => at), ...locate(event, last, end, slopeAt) };
  }
  return met;
}

/** Where an event falls within a step, by false position that halves the end which stays. */
function locate(
  event: Event,
  last: { readonly at: State; readonly slope: State },
  end: { readonly over: number; readonly step: Stepped },
  slopeAt: (at: State) => Slope,
): { over: number; step: Stepped } {
  let [low, lowLeft] = [0, event.left(last.at)];
  let high = end;
  let highLeft = event.left(end.step.to);
  let kept = 0;
  for (let i = 0; i < TRIES && highLeft < 0 && high.over - low > CLOSE * end.over; i++) {
    const share = i % 4 === 3 ? 0.5 : lowLeft / (lowLeft - highLeft);
    const over = low + share * (high.over - low);
    if (over <= low || over >= high.over) break;
    const tried = step(last.at, last.slope, over, slopeAt);
    const left = typeof tried === 'string' ? -1 : event.left(tried.to);
    if (left > CLOSE) {
      [low, lowLeft] = [over, left];
      if (kept === 1) highLeft /= 2;
      kept = 1;
    } else {
      if (typeof tried !== 'string') high = { over, step: tried };
      highLeft = left;
      if (Math.abs(left) <= CLOSE) break;
      if (kept === -1) lowLeft /= 2;
      kept = -1;
    }
  }
  return high;
}
