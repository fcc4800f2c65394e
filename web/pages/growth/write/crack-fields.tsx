import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { TextIn } from '../../../parts/write/inputs.tsx';
import { at } from '../../../parts/write/json.ts';
import { SourceIn } from '../../../parts/write/source-in.tsx';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { shapeOf } from './shapes.ts';

/** The flaw that is assumed from the start, and the size that a look finds. */
export function CrackFields() {
  const { draft } = useForm();
  const deep = shapeOf(at(draft, ['geometry', 'shape']))?.deep ?? false;
  return (
    <>
      <section className="sheet part" aria-labelledby="flaw" data-place="first_flaw" tabIndex={-1}>
        <h2 id="flaw">The first flaw</h2>
        <WrongAt path={['first_flaw']} />
        <p className="soft">Assumed to be there when the hours begin to count.</p>
        <Size of="first_flaw" deep={deep} />
        <SourceIn path={['first_flaw', 'from']} of="the first flaw" />
      </section>
      <section className="sheet part" aria-labelledby="detectable" data-place="detectable" tabIndex={-1}>
        <h2 id="detectable">What a look can find</h2>
        <WrongAt path={['detectable']} />
        <Size of="detectable" deep={deep}>
          <TextIn path={['detectable', 'method']} keep label="Method" hint="Way of looking, and what is off" />
        </Size>
        <SourceIn path={['detectable', 'from']} of="the detectable size" />
      </section>
    </>
  );
}

function Size({ of, deep, children }: { of: string; deep: boolean; children?: React.ReactNode }) {
  return (
    <div className="fields">
      <FigureOf
        path={[of, 'c_mm']}
        label="Length c"
        hint={deep ? 'Along the surface' : 'From the hole or edge; half of one in the middle'}
      />
      {deep ? <FigureOf path={[of, 'a_mm']} label="Depth a" /> : null}
      {children}
    </div>
  );
}
