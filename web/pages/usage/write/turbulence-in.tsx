import { Field } from '../../../parts/field.tsx';
import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { TextIn } from '../../../parts/write/inputs.tsx';
import { at, type Path, tableOf } from '../../../parts/write/json.ts';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useChoices } from './choices.ts';

/** Segments of continuous turbulence; the intensities of a height can be filled in from the library. */
export function TurbulenceIn({ path }: { path: Path }) {
  return (
    <>
      <p className="soft">
        Exceedances of continuous turbulence, as in 14 CFR 25 appendix G, summed over the segments of a flight; up and
        down alike.
      </p>
      <RowsOf path={[...path, 'segments']} title="Segments" add="Add a segment" one="segment" item={{}}>
        {(row) => (
          <>
            <TextIn path={[...row, 'name']} label="Segment" />
            <FigureOf path={[...row, 'share_of_time']} label="Share of time" hint="0 to 1" />
            <FigureOf path={[...row, 'zero_crossings_per_s']} label="Zero crossings" unit="per s" />
            <FigureOf path={[...row, 'response_g_per_m_per_s']} label="Response A" />
            <Heights path={row} />
            <FigureOf path={[...row, 'p1']} label="P1" />
            <FigureOf path={[...row, 'b1_m_per_s']} label="b1" />
            <FigureOf path={[...row, 'p2']} label="P2" />
            <FigureOf path={[...row, 'b2_m_per_s']} label="b2" />
          </>
        )}
      </RowsOf>
      <div className="fields">
        <FigureOf path={[...path, 'to']} label="Counted up to" unit="g" hint="Largest increment" />
      </div>
    </>
  );
}

/** Fills P and b of a segment from a row of the library, with its source. */
function Heights({ path }: { path: Path }) {
  const { draft, send } = useForm();
  const { turbulence } = useChoices();
  const segment = tableOf(at(draft, path));
  const load = path.slice(0, -2);
  const same = turbulence.findIndex((t) => t.p1 === segment.p1 && t.b1_m_per_s === segment.b1_m_per_s);
  const fill = (index: string) => {
    const t = turbulence[Number(index)];
    if (!t) return;
    const { b1_ft_per_s: _1, b2_ft_per_s: _2, ...rest } = segment;
    const { p1, b1_m_per_s, p2, b2_m_per_s } = t;
    const name = segment.name ?? t.name;
    send({ does: 'put', path, value: { ...rest, name, p1, b1_m_per_s, p2, b2_m_per_s } });
    send({ does: 'put', path: [...load, 'from'], value: { ...t.from } });
  };
  if (turbulence.length === 0) return null;
  return (
    <Field label="Fill P and b from a height" hint="With the source of the library">
      {(ids) => (
        <select {...ids} value={same < 0 ? '' : String(same)} onChange={(e) => fill(e.target.value)}>
          <option value="">own figures</option>
          {turbulence.map((t, i) => (
            <option key={t.name} value={i}>
              {t.name}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
