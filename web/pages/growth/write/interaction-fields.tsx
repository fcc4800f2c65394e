import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { ChoiceIn } from '../../../parts/write/inputs.tsx';
import { at, textOf } from '../../../parts/write/json.ts';
import { SourceIn } from '../../../parts/write/source-in.tsx';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { INTERACTIONS } from './empty.ts';

const I = ['interaction'] as const;
const AS = [
  { value: 'none', text: 'not at all: the cautious side' },
  { value: 'wheeler', text: 'a high one slows the next: Wheeler' },
  { value: 'willenborg', text: 'a high one slows the next: Willenborg' },
];
const PLANE = [
  { value: 'stress', text: 'plane stress' },
  { value: 'strain', text: 'plane strain' },
];

/** How one cycle acts on the next. */
export function InteractionFields() {
  const { draft, send } = useForm();
  const as = textOf(at(draft, [...I, 'as'])) || 'none';
  return (
    <section className="sheet part" aria-labelledby="interaction" data-place="interaction" tabIndex={-1}>
      <h2 id="interaction">How one cycle acts on the next</h2>
      <WrongAt path={I} />
      <p className="soft">The looks rest on the life without it; the one with it is shown beside.</p>
      <div className="fields">
        <ChoiceIn
          path={[...I, 'as']}
          label="A cycle acts on the next"
          wide
          options={AS}
          shown={as}
          choose={(v) => send({ does: 'put', path: I, value: INTERACTIONS[v]! })}
        />
        {as === 'wheeler' ? <FigureOf path={[...I, 'exponent']} label="Exponent" /> : null}
        {as === 'willenborg' ? (
          <>
            <FigureOf path={[...I, 'threshold_MPa_sqrt_m']} label="Threshold of ΔK" />
            <FigureOf path={[...I, 'shut_off_ratio']} label="Shut-off ratio" hint="Above it growth stops" />
          </>
        ) : null}
        {as === 'none' ? null : <ChoiceIn path={[...I, 'plane']} label="At the tip" options={PLANE} />}
      </div>
      {as === 'none' ? null : <SourceIn path={[...I, 'from']} of="the retardation" />}
    </section>
  );
}
