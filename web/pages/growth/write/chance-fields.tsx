import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { ChoiceIn } from '../../../parts/write/inputs.tsx';
import { OwnPart } from '../../../parts/write/own-part.tsx';
import { NO_SOURCE, SourceIn } from '../../../parts/write/source-in.tsx';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { NEW_CHANCE } from './empty.ts';

const C = ['chance'] as const;
const D = [...C, 'detection'] as const;
const SPREADS = [
  { field: 'growth_rate', label: 'Growth rate', of: 'the scatter of growth rates' },
  { field: 'stress', label: 'Stress', of: 'the scatter of stresses' },
  { field: 'toughness', label: 'Toughness', of: 'the scatter of toughness' },
];
const OF = [
  { value: 'c', text: 'the length c' },
  { value: 'a', text: 'the depth a' },
];

/** Scatter, and how surely a look finds a crack: what the drawn lives rest on. */
export function ChanceFields() {
  return (
    <section className="sheet part" aria-labelledby="chance" data-place="chance" tabIndex={-1}>
      <h2 id="chance">Scatter and chance</h2>
      <WrongAt path={C} />
      <WrongAt path={D} />
      <OwnPart title="" path={C} fresh={NEW_CHANCE} add="Draw lives with scatter">
        <div className="fields">
          <FigureOf path={[...C, 'lives']} label="Lives drawn" />
          <FigureOf path={[...C, 'seed']} label="Seed" hint="The same seed draws the same lives" />
        </div>
        {SPREADS.map((s) => (
          <div key={s.field}>
            <div className="fields">
              <FigureOf
                path={[...C, s.field, 'sd_ln']}
                label={`${s.label}, scatter`}
                hint="Standard deviation of its natural logarithm"
              />
            </div>
            <SourceIn path={[...C, s.field, 'from']} of={s.of} />
          </div>
        ))}
        <OwnPart
          title="How surely a look finds a crack"
          path={D}
          fresh={{ from: NO_SOURCE }}
          add="State how surely a look finds a crack"
        >
          <div className="fields">
            <FigureOf path={[...D, 'a50_mm']} label="Found every other time" />
            <FigureOf path={[...D, 'a90_mm']} label="Found nine times in ten" />
            <FigureOf path={[...D, 'most']} label="Never surer than" hint="Share; empty: 0.99" />
            <ChoiceIn path={[...D, 'of']} label="Sizes are of" options={OF} empty="the length c" />
          </div>
          <SourceIn path={[...D, 'from']} of="the chance of finding" />
        </OwnPart>
      </OwnPart>
    </section>
  );
}
