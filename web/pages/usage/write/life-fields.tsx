import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { shownWord } from '../../../parts/write/figures.ts';
import { ChoiceIn, TextIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, tableOf, textOf } from '../../../parts/write/json.ts';
import { OwnPart } from '../../../parts/write/own-part.tsx';
import { KNOWN, SourceIn } from '../../../parts/write/source-in.tsx';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { useChoices } from './choices.ts';
import { OWN_CURVE } from './empty.ts';

const C = ['life', 'curve'] as const;
const F = ['life', 'scatter_factor'] as const;
const OWN = 'own';

/** How the place tires: S-N curve, scatter factor, the use that an hour is measured by, and the drawn sequence. */
export function LifeFields() {
  const { draft, send } = useForm();
  const { life_curves } = useChoices();
  const curve = tableOf(at(draft, C));
  const own = !('library' in curve);
  const uses = listOf(draft.uses)
    .map((u) => textOf(tableOf(u).use))
    .filter(Boolean);
  const chosen = life_curves.find((c) => c.library === curve.library);
  return (
    <section className="sheet part" aria-labelledby="tires" data-place="life" tabIndex={-1}>
      <h2 id="tires">How the place tires</h2>
      <WrongAt path={C} />
      <WrongAt path={['sequence']} />
      <div className="fields" data-place={C.join('.')} tabIndex={-1}>
        <ChoiceIn
          path={[...C, 'library']}
          label="S-N curve"
          wide
          options={[
            ...life_curves.map((c) => ({ value: c.library, text: c.name })),
            { value: OWN, text: 'one of our own' },
          ]}
          shown={own ? OWN : textOf(curve.library)}
          choose={(v) => send({ does: 'put', path: C, value: v === OWN ? OWN_CURVE : { library: v } })}
          hint={
            chosen
              ? `${chosen.from.source}, ${KNOWN.find((k) => k.value === chosen.from.known)?.text ?? ''}`
              : undefined
          }
        />
        <ChoiceIn
          path={['reference_use']}
          label="An hour is measured by"
          options={uses.map((u) => ({ value: u, text: shownWord(u) }))}
        />
      </div>
      {own ? <OwnCurve /> : null}
      <div className="fields">
        <FigureOf path={[...F, 'value']} label="Scatter factor" hint="Mean life over safe life" />
      </div>
      <SourceIn path={[...F, 'from']} of="the scatter factor" />
      <OwnPart
        title="Flight-by-flight sequence"
        path={['sequence']}
        fresh={{ seed: 1, flights: 1000 }}
        add="Count it from a drawn sequence as well"
      >
        <div className="fields">
          <FigureOf path={['sequence', 'flights']} label="Flights drawn" />
          <FigureOf path={['sequence', 'seed']} label="Seed" hint="The same seed draws the same flights" />
        </div>
      </OwnPart>
    </section>
  );
}

function OwnCurve() {
  return (
    <div className="own">
      <p className="soft">log10 N = a1 + a2 · log10(Seq − a4), with Seq = Smax · (1 − R)^a3, stresses in ksi.</p>
      <div className="fields">
        <TextIn path={[...C, 'name']} keep label="Material and form" />
        <FigureOf path={[...C, 'a1']} label="a1" />
        <FigureOf path={[...C, 'a2']} label="a2" hint="Below zero" />
        <FigureOf path={[...C, 'a3']} label="a3" />
        <FigureOf path={[...C, 'a4_MPa']} always="a4_ksi" label="a4" />
        <FigureOf path={[...C, 'stress_concentration']} label="Stress concentration Kt" />
      </div>
      <SourceIn path={[...C, 'from']} of="the S-N curve" />
    </div>
  );
}
