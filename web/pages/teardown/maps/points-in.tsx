import { between, pointsOf } from '../../../../sheets/scenes/map-drawing.ts';
import { useForm } from '../../../parts/write/context.tsx';
import { FigureIn } from '../../../parts/write/inputs.tsx';
import { at, type Json, listOf, type Path } from '../../../parts/write/json.ts';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';

/** The points of an outline or a row as figures: the same that can be dragged on the plan. */
export function PointsIn({ path, title }: { path: Path; title: string }) {
  const { draft, send } = useForm();
  const points = listOf(at(draft, path));
  const add = (after: number) => {
    const drawn = pointsOf(points);
    const [a, b] = [drawn[after], drawn[(after + 1) % Math.max(1, drawn.length)]];
    const item: Json = [...(a && b ? between(a, b) : [0, 0])];
    send({ does: 'put', path, value: [...points.slice(0, after + 1), item, ...points.slice(after + 1)] });
  };
  return (
    <details className="points" data-place={path.join('.')} tabIndex={-1}>
      <summary>
        {title}, {points.length} {points.length === 1 ? 'point' : 'points'}
      </summary>
      <table>
        <caption className="hidden-text">{title}, mm</caption>
        <thead>
          <tr>
            <th scope="col">Point</th>
            <th scope="col">
              x, aft <span className="unit">mm</span>
            </th>
            <th scope="col">
              y, starboard <span className="unit">mm</span>
            </th>
            <th scope="col">
              <span className="hidden-text">Change</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {points.map((_, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the outline
            <tr key={i} data-place={[...path, i].join('.')} tabIndex={-1}>
              <td>{i + 1}</td>
              {[0, 1].map((k) => (
                <td key={k}>
                  <FigureIn
                    path={[...path, i, k]}
                    keep
                    within
                    label={`${title}, point ${i + 1}, ${k === 0 ? 'x' : 'y'}`}
                  />
                </td>
              ))}
              <td>
                <button type="button" className="quiet" onClick={() => add(i)}>
                  One more after<span className="hidden-text"> point {i + 1}</span>
                </button>{' '}
                <button type="button" className="quiet" onClick={() => send({ does: 'drop', path: [...path, i] })}>
                  Take away<span className="hidden-text"> point {i + 1}</span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {points.length ? null : (
        <button type="button" className="quiet add" onClick={() => send({ does: 'add', path, item: [0, 0] })}>
          Add a point
        </button>
      )}
      <WrongAt path={path} />
    </details>
  );
}
