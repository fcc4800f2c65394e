import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { ChoiceIn, TextIn } from '../../../parts/write/inputs.tsx';
import { at, tableOf, textOf } from '../../../parts/write/json.ts';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { KNOWN, NO_SOURCE, SourceIn } from '../../../parts/write/source-in.tsx';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { useChoices } from './choices.ts';
import { OWN_MATERIAL } from './empty.ts';

const M = ['material'] as const;
const OWN = 'own';
const LAWS = [
  { value: 'paris', text: 'Paris' },
  { value: 'walker', text: 'Walker' },
  { value: 'forman', text: 'Forman' },
  { value: 'closure', text: 'with crack closure and threshold' },
];
const UNITS = ['mm, MPa√m', 'm, MPa√m', 'in, ksi√in'].map((value) => ({ value, text: value }));
/** The constants of each law, as its formula writes them. */
const CONSTANTS: Readonly<
  Record<string, { readonly says: string; readonly fields: readonly (readonly [string, string])[] }>
> = {
  paris: {
    says: 'da/dN = C ΔK^n',
    fields: [
      ['c', 'C'],
      ['n', 'n'],
    ],
  },
  walker: {
    says: 'da/dN = C [ΔK (1 − R)^(m − 1)]^n',
    fields: [
      ['c', 'C'],
      ['n', 'n'],
      ['m', 'm'],
    ],
  },
  forman: {
    says: 'da/dN = C ΔK^n / [(1 − R) Kc − ΔK]',
    fields: [
      ['c', 'C'],
      ['n', 'n'],
      ['kc', 'Kc'],
    ],
  },
  closure: {
    says: 'da/dN = C [(1 − f)/(1 − R) ΔK]^n (1 − ΔKth/ΔK)^p / (1 − Kmax/Kc)^q',
    fields: [
      ['c', 'C'],
      ['n', 'n'],
      ['p', 'p'],
      ['q', 'q'],
      ['dk0', 'ΔK0'],
      ['alpha', 'α, constraint'],
      ['s', 'Smax over flow stress'],
      ['kc', 'Kc'],
    ],
  },
};

/** From the library with the law to be taken, or one's own, every constant with its source. */
export function MaterialFields() {
  const { draft, send } = useForm();
  const { materials } = useChoices();
  const material = tableOf(at(draft, M));
  const own = !('library' in material);
  const chosen = materials.find((m) => m.library === material.library);
  const laws = chosen ? LAWS.filter((l) => chosen.laws.some((x) => x === l.value)) : LAWS;
  const choose = (v: string) => {
    if (v === OWN) return send({ does: 'put', path: M, value: OWN_MATERIAL });
    const has: readonly string[] = materials.find((m) => m.library === v)?.laws ?? [];
    const law = textOf(own ? 'walker' : material.law);
    send({ does: 'put', path: M, value: { library: v, law: has.includes(law) ? law : (has[0] ?? law) } });
  };
  return (
    <section className="sheet part" aria-labelledby="material" data-place="material" tabIndex={-1}>
      <h2 id="material">The material</h2>
      <WrongAt path={M} />
      <div className="fields">
        <ChoiceIn
          path={[...M, 'library']}
          label="Material"
          wide
          options={[
            ...materials.map((m) => ({ value: m.library, text: m.name })),
            { value: OWN, text: 'one of our own' },
          ]}
          shown={own ? OWN : textOf(material.library)}
          choose={choose}
          hint={chosen ? `Its weakest constant: ${KNOWN.find((k) => k.value === chosen.known)?.text}` : undefined}
        />
        {own ? null : <ChoiceIn path={[...M, 'law']} label="Growth law" options={laws} />}
      </div>
      {own ? <Own /> : null}
    </section>
  );
}

function Own() {
  const { draft, send } = useForm();
  const law = tableOf(at(draft, [...M, 'law']));
  const form = CONSTANTS[textOf(law.law)];
  return (
    <div className="own">
      <div className="fields">
        <TextIn path={[...M, 'name']} keep label="Material, form and direction" whole />
        <ChoiceIn
          path={[...M, 'law', 'law']}
          label="Growth law"
          options={LAWS}
          choose={(v) =>
            send({
              does: 'put',
              path: [...M, 'law'],
              value: { law: v, units: law.units ?? 'mm, MPa√m', from: law.from ?? NO_SOURCE },
            })
          }
        />
        <ChoiceIn path={[...M, 'law', 'units']} label="Constants in" options={UNITS} hint="Growth a cycle, and K" />
        {(form?.fields ?? []).map(([field, label]) => (
          <FigureOf key={field} path={[...M, 'law', field]} label={label} />
        ))}
      </div>
      {form ? <p className="soft">{form.says}</p> : null}
      <SourceIn path={[...M, 'law', 'from']} of="the growth law" />
      <div className="fields">
        <YieldIn />
      </div>
      <SourceIn path={[...M, 'yield_MPa', 'from']} of="the yield stress" />
      <RowsOf
        path={[...M, 'toughness']}
        title="Fracture toughness"
        add="Add a thickness"
        one="thickness"
        item={{ from: NO_SOURCE }}
      >
        {(row) => (
          <>
            <FigureOf path={[...row, 'thickness_mm']} label="At thickness" />
            <FigureOf path={[...row, 'k_MPa_sqrt_m']} label="Toughness K" />
            <SourceIn path={[...row, 'from']} of="this toughness" />
          </>
        )}
      </RowsOf>
    </div>
  );
}

/** The yield stress is a figure with a source of its own: the name of its unit stands one level above. */
const YieldIn = () => <FigureOf path={[...M, 'yield_MPa', 'value']} label="Yield stress" unit="MPa" />;
