import { Invented } from '../../../parts/basis/invented.tsx';
import { useForm } from '../../../parts/write/context.tsx';
import { addFresh } from '../../../parts/write/focus-place.ts';
import { NamesIn, TextIn } from '../../../parts/write/inputs.tsx';
import { listOf } from '../../../parts/write/json.ts';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { AeroplaneFields } from './aeroplane-fields.tsx';
import { newUse } from './empty.ts';
import { HoursFields } from './hours-fields.tsx';
import { LifeFields } from './life-fields.tsx';
import { StressFields } from './stress-fields.tsx';
import { UseFields } from './use-fields.tsx';

/** A usage document, from the aeroplane to the scatter factor. */
export function UsageFields() {
  const { draft, send } = useForm();
  const uses = listOf(draft.uses);
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
      <AeroplaneFields />
      {uses.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a use is its place in the document
        <UseFields key={i} index={i} />
      ))}
      <div className="actions" data-place="uses" tabIndex={-1}>
        <button
          type="button"
          onClick={() =>
            addFresh(['uses', uses.length], () => send({ does: 'add', path: ['uses'], item: newUse(uses.length + 1) }))
          }
        >
          Add a use
        </button>
        <WrongAt path={['uses']} />
      </div>
      <StressFields />
      <LifeFields />
      <HoursFields />
    </>
  );
}
