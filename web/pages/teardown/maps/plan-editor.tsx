import { type PointerEvent, useMemo, useRef, useState } from 'react';
import {
  type DrawingFrame,
  drawingFrame,
  inPicture,
  mapDrawing,
  nudged,
  onWing,
  type PlanPoint,
  pointsOf,
} from '../../../../sheets/scenes/map-drawing.ts';
import { useForm } from '../../../parts/write/context.tsx';
import { at, type Path } from '../../../parts/write/json.ts';

export interface ChosenThing {
  readonly of: 'parts' | 'joins';
  readonly index: number;
}
type Side = 'left' | 'right' | 'both';
const SIDES = [
  ['left', 'Left wing'],
  ['right', 'Right wing'],
  ['both', 'Both'],
] as const;

/**
 * The map as it is drawn: a press chooses a part or a row, its points are dragged, or moved by the arrow keys (10 mm,
 * with Shift 1 mm). What is chosen is in dye; the lists below choose the same by name.
 */
export function PlanEditor({
  chosen,
  choose,
  side,
  setSide,
}: {
  chosen: ChosenThing;
  choose: (thing: ChosenThing) => void;
  side: Side;
  setSide: (side: Side) => void;
}) {
  const { draft, send } = useForm();
  const [held, setHeld] = useState<{ readonly point: number; readonly frame: DrawingFrame } | null>(null);
  const svg = useRef<SVGSVGElement>(null);
  const now = useMemo(() => drawingFrame(draft, side), [draft, side]);
  const frame = held?.frame ?? now;
  const { parts, joins } = mapDrawing(draft, side, frame);
  const place: Path = [chosen.of, chosen.index, chosen.of === 'parts' ? 'outline' : 'line'];
  const points = pointsOf(at(draft, place));
  const isChosen = (of: 'parts' | 'joins', index: number) => chosen.of === of && chosen.index === index;
  const setPoint = (i: number, p: PlanPoint) => send({ does: 'put', path: [...place, i], value: [...p] });
  const under = (e: PointerEvent): PlanPoint | null => {
    const box = svg.current?.getBoundingClientRect();
    return box ? onWing(frame, [(e.clientX - box.left) / box.width, (e.clientY - box.top) / box.height]) : null;
  };
  const name = [...parts, ...joins].find((t) => isChosen(chosen.of, t.index) && t.name)?.name ?? 'nothing';
  return (
    <figure className="plan-editor">
      <fieldset className="sides">
        <legend className="hidden-text">Which wing is drawn</legend>
        {SIDES.map(([value, text]) => (
          <label className="choice" key={value}>
            <input type="radio" name="drawn-side" checked={side === value} onChange={() => setSide(value)} />
            {text}
          </label>
        ))}
      </fieldset>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing with handles is no fieldset */}
      <svg
        ref={svg}
        viewBox={`0 0 ${frame.width} ${frame.height}`}
        role="group"
        aria-label={`The wing from above, nose up: ${parts.length} parts, ${joins.length} rows`}
        onPointerMove={(e) => {
          const p = held ? under(e) : null;
          if (held && p) setPoint(held.point, p);
        }}
        onPointerUp={() => setHeld(null)}
        onPointerLeave={() => setHeld(null)}
      >
        {(['parts', 'joins'] as const).flatMap((of) =>
          (of === 'parts' ? parts : joins).map((t) => (
            <path
              key={`${of} ${t.index}`}
              d={t.d}
              className={`${of === 'parts' ? 'drawn-part' : 'drawn-row'}${isChosen(of, t.index) ? ' chosen' : ''}${t.hidden ? ' under' : ''}`}
              onPointerDown={() => choose({ of, index: t.index })}
            >
              <title>{t.name}</title>
            </path>
          )),
        )}
        {points.map((p, i) => {
          const [x, y] = inPicture(frame, p);
          return (
            // biome-ignore lint/a11y/useSemanticElements: a handle within a drawing
            <circle
              // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the outline
              key={i}
              cx={x}
              cy={y}
              r={7}
              className="handle"
              role="button"
              tabIndex={0}
              aria-label={`Point ${i + 1} of ${name}: x ${p[0]} mm, y ${p[1]} mm; arrow keys move it`}
              onPointerDown={(e) => {
                e.stopPropagation();
                setHeld({ point: i, frame });
              }}
              onKeyDown={(e) => {
                const moved = nudged(p, e.key, e.shiftKey);
                if (!moved) return;
                e.preventDefault();
                setPoint(i, moved);
              }}
            />
          );
        })}
      </svg>
      <figcaption className="soft">
        Chosen: {name}. Press a part or a row to choose it, drag its points, or move them with the arrow keys.
      </figcaption>
    </figure>
  );
}
