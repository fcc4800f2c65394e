import { useId } from 'react';
import type { Scene, Shown } from '../../../../sheets/model.ts';
import { markShown } from '../../../../sheets/scenes/shown.ts';
import { MarkView } from '../../../parts/marks.tsx';

/**
 * The wing in a state of the work. Marks stay where they are from state to state, so that a part can fade as it comes
 * off; what is next is drawn over the rest, with its name.
 */
export function WingView({ scene, shown }: { scene: Scene; shown: Shown }) {
  const id = useId().replaceAll(/[^a-zA-Z0-9]/g, '');
  const next = scene.marks.filter((m) => m.id !== undefined && shown.seen[m.id] === 'next');
  return (
    <svg
      className="wing"
      viewBox={`0 0 ${scene.width} ${scene.height}`}
      role="img"
      aria-labelledby={`${id}t ${id}d`}
      preserveAspectRatio="xMidYMid meet"
    >
      <title id={`${id}t`}>{scene.title}</title>
      <desc id={`${id}d`}>{shown.description}</desc>
      {scene.marks.map((m, i) => {
        const seen = m.id === undefined ? undefined : shown.seen[m.id];
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: marks of one picture never move
          <g key={i} className={seen ? `seen ${seen}` : 'seen'}>
            <MarkView mark={kept(m, markShown(m, seen === 'next' ? 'comes-off' : seen))} hatch="" />
          </g>
        );
      })}
      <g className="over">
        {next.map((m) => (
          <MarkView key={m.id} mark={markShown(m, 'next')} hatch="" />
        ))}
        {shown.labels.map((m, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: names on leader lines have no other name
          <MarkView key={i} mark={m} hatch="" />
        ))}
      </g>
    </svg>
  );
}
type Mark = Scene['marks'][number];
/** What fades keeps its fill: the look takes it away by degrees. */
const kept = (before: Mark, now: Mark): Mark =>
  before.is !== 'text' && now.is !== 'text' && now.fill === 'none' ? { ...now, fill: before.fill } : now;
