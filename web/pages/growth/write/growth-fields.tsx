import { Invented } from '../../../parts/basis/invented.tsx';
import { NamesIn, TextIn } from '../../../parts/write/inputs.tsx';
import { ChanceFields } from './chance-fields.tsx';
import { CrackFields } from './crack-fields.tsx';
import { InForceFields } from './in-force-fields.tsx';
import { InteractionFields } from './interaction-fields.tsx';
import { LoadingFields } from './loading-fields.tsx';
import { MaterialFields } from './material-fields.tsx';
import { PlaceFields } from './place-fields.tsx';
import { RuleFields } from './rule-fields.tsx';

/** A growth document, from the place to the scatter. */
export function GrowthFields() {
  return (
    <>
      <section className="sheet part" aria-labelledby="what">
        <h2 id="what">What it is</h2>
        <div className="fields">
          <TextIn path={['title']} label="Title" hint="Type and place; it is kept under this name" whole />
          <NamesIn path={['models']} label="Models of aircraft" />
          <Invented />
        </div>
      </section>
      <PlaceFields />
      <CrackFields />
      <MaterialFields />
      <LoadingFields />
      <InteractionFields />
      <RuleFields />
      <ChanceFields />
      <InForceFields />
    </>
  );
}
