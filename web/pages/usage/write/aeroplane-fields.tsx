import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { TextIn } from '../../../parts/write/inputs.tsx';
import { SourceIn } from '../../../parts/write/source-in.tsx';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';

const A = 'aeroplane';

/** Limits and the figures that a gust formula needs. */
export function AeroplaneFields() {
  return (
    <section className="sheet part" aria-labelledby="aeroplane" data-place={A} tabIndex={-1}>
      <h2 id="aeroplane">The aeroplane</h2>
      <WrongAt path={[A]} />
      <div className="fields">
        <TextIn path={[A, 'name']} keep label="Type" />
        <FigureOf path={[A, 'limit_up']} label="Limit load factor up" unit="g" hint="For example 3.8" />
        <FigureOf path={[A, 'limit_down']} label="Limit load factor down" unit="g" hint="For example -1.52" />
        <FigureOf
          path={[A, 'gust_limit_increment']}
          label="Limit increment in gusts"
          unit="g"
          hint="Empty: as the limit up"
        />
        <FigureOf path={[A, 'wing_loading_Pa']} label="Wing loading" hint="For gust velocities" />
        <FigureOf path={[A, 'mean_chord_m']} label="Mean chord" hint="For gust velocities" />
        <FigureOf path={[A, 'lift_slope_per_rad']} label="Lift slope" unit="per rad" hint="For gust velocities" />
      </div>
      <SourceIn path={[A, 'from']} of="the aeroplane's figures" />
    </section>
  );
}
