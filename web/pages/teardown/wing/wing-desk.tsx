import { useRef, useState } from 'react';
import type { JobSteps } from '../../../api/teardown.ts';
import { today } from '../../../api/today.ts';
import { Answer } from '../../../parts/answer.tsx';
import { byOthers, changeOf, ownFindings } from './changes.ts';
import { Correct } from './correct.tsx';
import { Meanwhile, NotRecorded, PlanIsNew, PlanStays } from './notices.tsx';
import { concerns, isOf, recordWords, typedKey } from './record.ts';
import { Recording } from './recording.tsx';
import { Run } from './run.tsx';
import { StepWords } from './step-words.tsx';
import { TakeBack } from './take-back.tsx';
import type { Work } from './use-work.ts';
import { Who } from './who.tsx';
import { WingView } from './wing-view.tsx';

/** The first step that is neither done nor waiting to be recorded. */
function nextOf({ steps }: JobSteps, work: Pick<Work, 'waiting'>): number {
  const at = steps.findIndex((s) => s.operation !== null && !s.done && !work.waiting.some((r) => isOf(r, s)));
  return at < 0 ? steps.length - 1 : at;
}
const partsOf = (s: JobSteps) =>
  s.scene.marks.flatMap((m) =>
    m.is === 'path' && m.id?.startsWith('part:') && m.title ? [{ id: m.id.slice(5), name: m.title }] : [],
  );

/** The picture, the slider, the step, and recording it. */
export function WingDesk({ steps, work }: { steps: JobSteps; work: Work }) {
  /** The step that was chosen, by its operation; null follows what is next; the end has none. */
  const [chosen, choose] = useState<{ readonly operation: string | null } | null>(null);
  /** What the person at this page has seen: what came since is told. */
  const [seen, see] = useState(steps);
  const [on, setOn] = useState(today);
  const [lacks, setLacks] = useState(false);
  const name = useRef<HTMLInputElement>(null);
  const now = nextOf(steps, work);
  const found = chosen ? steps.steps.findIndex((s) => s.operation === chosen.operation) : now;
  const at = found < 0 ? now : found;
  const step = steps.steps[at]!;
  const next = steps.steps[now]!;
  const change = changeOf(seen, steps);
  const others = byOthers(steps, seen.last, work.mine);
  const stays = change ? [] : ownFindings(steps, seen.last, work.mine);
  const done = steps.steps.filter((s) => s.operation !== null && s.done).length;
  const count = steps.steps.length - 1;
  const key = typedKey(step);
  const holes = `holes:${step.join}`;
  const entry = steps.work.findLast((w) => isOf(w.record, step))?.entry;
  const needName = () => {
    setLacks(true);
    name.current?.focus();
  };
  return (
    <div className="wing-desk">
      <Answer
        answer={
          next.operation
            ? [{ text: 'Next: ' }, { text: next.title, figure: true }, { text: '.' }]
            : [{ text: 'All steps are ' }, { text: 'done', figure: true }, { text: '.' }]
        }
        because={`${steps.title}: ${done} of ${count} steps are done.`}
      />
      <NotRecorded
        lines={work.busy && work.error === null ? [] : work.waiting.map((r) => recordWords(r, steps.steps))}
        error={work.error}
        busy={work.busy}
        again={work.again}
        takeBack={work.takeBack}
      />
      {others.length ? <Meanwhile lines={others} seen={() => see(steps)} /> : null}
      {change ? <PlanIsNew change={change} seen={() => see(steps)} /> : null}
      {stays.length ? <PlanStays lines={stays} seen={() => see(steps)} /> : null}
      <div className="wing-and-step">
        <section className="sheet" aria-label="The wing">
          <WingView scene={steps.scene} shown={step.shown} />
          <Run
            steps={steps.steps}
            at={at}
            now={now}
            go={(to) => choose(to === now ? null : { operation: steps.steps[to]!.operation })}
          />
        </section>
        <StepWords step={step} waiting={work.waiting.some((r) => isOf(r, step))}>
          <Recording
            key={key}
            step={step}
            typed={work.typedAt(key)}
            type={(c) => work.type(key, c)}
            holes={work.typedAt(holes)}
            typeHoles={(c) => work.type(holes, c)}
            who={work.name}
            on={on}
            parts={partsOf(steps)}
            busy={work.busy}
            record={(r) => {
              setLacks(false);
              choose(null);
              work.record(r);
            }}
            needName={needName}
          />
          {steps.work
            .filter((w) => concerns(w.record, step))
            .map((w) => (
              <Correct
                key={w.entry}
                shown={w}
                words={recordWords(w.record, steps.steps)}
                parts={partsOf(steps)}
                send={async (record, because) =>
                  work.name.trim() === '' ? needName() : work.correct(w.entry, record, because)
                }
              />
            ))}
          {entry !== undefined && step.done ? (
            <TakeBack
              key={entry}
              send={async (because) => (work.name.trim() === '' ? needName() : work.undo(entry, because))}
            />
          ) : null}
          {step.operation ? (
            <Who
              name={work.name}
              setName={(n) => {
                setLacks(false);
                work.setName(n);
              }}
              on={on}
              setOn={setOn}
              lacks={lacks}
              field={name}
            />
          ) : null}
          <p role="status" className="soft">
            {work.said}
          </p>
        </StepWords>
      </div>
    </div>
  );
}
