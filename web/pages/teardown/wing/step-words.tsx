import type { ReactNode } from 'react';
import type { WingStep } from '../../../../sheets/teardown/steps-of.ts';

/** What a step is: its words, fasteners, tools, hands and time. */
export function StepWords({ step, waiting, children }: { step: WingStep; waiting: boolean; children?: ReactNode }) {
  return (
    <section className={step.gate ? 'sheet step gate' : 'sheet step'} aria-labelledby="the-step">
      <h2 id="the-step">{step.title}</h2>
      {step.gate ? <p className="strong">Stop: nothing goes on before this is passed, by {step.who}.</p> : null}
      {step.first ? <p>{step.first}</p> : null}
      {step.facts.length ? (
        <ul className="facts">
          {step.facts.map((f) => (
            <li key={f}>{f}</li>
          ))}
        </ul>
      ) : null}
      {step.done && step.operation ? <p className="strong">Done{step.recorded ? `: ${step.recorded}` : ''}.</p> : null}
      {waiting ? <p className="strong">Typed here, not recorded yet.</p> : null}
      {children}
    </section>
  );
}
