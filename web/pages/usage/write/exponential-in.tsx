import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { at, type Path } from '../../../parts/write/json.ts';
import { OwnPart } from '../../../parts/write/own-part.tsx';

/** times · exp(−level / scale), up to the largest level that is counted. */
export function ExponentialIn({ path }: { path: Path }) {
  const { draft } = useForm();
  const lone = (other: 'up' | 'down') => at(draft, [...path, other]) === undefined;
  return (
    <>
      <p className="soft">A level is passed so often: times · exp(−level / scale).</p>
      {(['up', 'down'] as const).map((way) => (
        <OwnPart
          key={way}
          title={way === 'up' ? 'Upward' : 'Downward'}
          path={[...path, way]}
          fresh={{}}
          add={way === 'up' ? 'It loads upward too' : 'It loads downward too'}
          {...(lone(way === 'up' ? 'down' : 'up') ? { fixed: true } : {})}
        >
          <div className="fields">
            <FigureOf path={[...path, way, 'times']} label="Times" hint="The level 0 is passed so often" />
            <FigureOf path={[...path, way, 'scale']} label="Scale" hint="In the measure of its levels" />
            <FigureOf path={[...path, way, 'to']} label="Counted up to" hint="Beyond it nothing" />
          </div>
        </OwnPart>
      ))}
    </>
  );
}
