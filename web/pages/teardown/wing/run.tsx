import { useId } from 'react';
import type { WingSteps } from '../../../../sheets/teardown/steps-of.ts';

/** Runs the work back and forth: the slider, a step back, a step on, and to what is next to do. */
export function Run({
  steps,
  at,
  now,
  go,
}: {
  steps: WingSteps['steps'];
  at: number;
  /** The first step that is not done. */
  now: number;
  go: (at: number) => void;
}) {
  const id = useId();
  const last = steps.length - 1;
  const step = steps[at];
  const where = step?.operation ? `Step ${at + 1} of ${last}: ${step.title}` : (step?.title ?? '');
  return (
    <div className="run">
      <label htmlFor={id}>
        {step?.operation ? `Step ${at + 1} of ${last}` : `After all ${last} steps`}
        <span className="soft"> {step?.stage}</span>
      </label>
      <input
        id={id}
        type="range"
        min={0}
        max={last}
        value={at}
        aria-valuetext={where}
        onChange={(e) => go(Number(e.target.value))}
      />
      <div className="big-actions">
        <button type="button" disabled={at === 0} onClick={() => go(at - 1)}>
          Back
        </button>
        <button type="button" disabled={at === last} onClick={() => go(at + 1)}>
          On
        </button>
        <button type="button" disabled={at === now} onClick={() => go(now)}>
          What is next
        </button>
      </div>
    </div>
  );
}
