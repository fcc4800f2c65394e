import type { CrackForm, CrackSize, EndOfGrowth } from '../model.ts';
import { type Event, firstEvent } from './events.ts';
import type { Stretch } from './model.ts';
import { type Slope, type State, type Stepped, step } from './step.ts';

const LONGEST_STEP = 0.5;
const SHORTEST_STEP = 1e-9;
const SAFETY = 0.9;
/** A length that is off shifts every later rate by about the exponent of the law; none here is above this. */
const RATE_EXPONENT = 8;

/** The estimate of a step is of the lower order; where K or the law has a kink it may fall short of the error. */
const SAFE = 5;

export interface Way {
  readonly stretches: readonly Stretch[];
  readonly ended: EndOfGrowth;
  readonly end: State;
  /** Where it came through, as the state of the form before. */
  readonly through: State | null;
  /** Bound of the error of the third component, as a share of it. */
  readonly error: number;
}

/** Walks a crack from its start to what ends it, over into the through crack where it comes through. */
export function walk(
  form: CrackForm,
  from: CrackSize,
  slopeAlong: (form: CrackForm) => (at: State) => Slope,
  eventsOf: (form: CrackForm) => readonly Event[],
  tolerance: number,
): Way {
  const stretches: Stretch[] = [];
  let error = 0;
  let through: State | null = null;
  let now = form;
  let state: State = [from.c_mm, from.a_mm ?? 0, 0];
  for (;;) {
    const walked = walkStretch(state, slopeAlong(now), eventsOf(now), tolerance);
    stretches.push({ form: now, steps: walked.steps });
    error += walked.error;
    state = walked.steps.at(-1)!.at;
    if (walked.ended !== 'through') return { stretches, ended: walked.ended, end: state, through, error };
    through = state;
    now = now.through!;
    state = [state[0], 0, state[2]];
    if (now.outside({ c_mm: state[0] }) !== null) return { stretches, ended: 'ligament', end: state, through, error };
  }
}

interface Walked {
  readonly steps: Stretch['steps'];
  readonly ended: EndOfGrowth | 'through';
  readonly error: number;
}

function walkStretch(start: State, slopeAt: (at: State) => Slope, events: readonly Event[], tolerance: number): Walked {
  const first = slopeAt(start);
  const begun = events.find((e) => e.left(start) <= 0);
  if (begun) return { steps: [{ at: start, slope: [0, 0, 0], along: 0 }], ended: begun.ended, error: 0 };
  if (typeof first === 'string')
    return { steps: [{ at: start, slope: [0, 0, 0], along: 0 }], ended: endOf(first), error: 0 };
  const steps: { at: State; slope: State; along: number }[] = [{ at: start, slope: first, along: 0 }];
  let error = 0;
  let offSize = 0;
  let over = 0.05;
  for (;;) {
    const last = steps.at(-1)!;
    const tried = step(last.at, last.slope, over, slopeAt);
    if (typeof tried === 'string') {
      over /= 2;
      if (over < SHORTEST_STEP) return done(endOf(tried));
      continue;
    }
    const off = worst(tried);
    if (off > tolerance && over > SHORTEST_STEP) {
      over *= Math.max(0.2, SAFETY * Math.exp(-0.2 * Math.log(off / tolerance)));
      continue;
    }
    const event = firstEvent(events, last, tried, over, slopeAt);
    const taken = event?.step ?? tried;
    steps.push({
      at: event ? event.onto(taken.to) : taken.to,
      slope: taken.slope,
      along: last.along + (event?.over ?? over),
    });
    error += Math.abs(taken.error[2]);
    offSize += sizeError(taken);
    if (event) return done(event.ended);
    over = Math.min(
      LONGEST_STEP,
      over * Math.min(5, SAFETY * Math.exp(-0.2 * Math.log(Math.max(off, 1e-14) / tolerance))),
    );
  }
  function done(ended: Walked['ended']): Walked {
    const hours = steps.at(-1)!.at[2];
    return { steps, ended, error: hours > 0 ? SAFE * (error / hours + RATE_EXPONENT * offSize) + 1e-9 : 0 };
  }
}

const sizeError = ({ to, error }: Stepped) => Math.abs(error[0]) / to[0] + (to[1] > 0 ? Math.abs(error[1]) / to[1] : 0);
const worst = (s: Stepped) => Math.max(sizeError(s), Math.abs(s.error[2]) / s.to[2]);
const endOf = (met: string): EndOfGrowth =>
  met === 'stuck' ? 'no growth' : met === 'broken' ? 'critical' : 'ligament';
