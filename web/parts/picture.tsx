import { useId, useState } from 'react';
import type { PictureBlock } from '../../sheets/model.ts';
import { MarkView } from './marks.tsx';
import { Table } from './table.tsx';
import { type Choosing, Zones } from './zones.tsx';

/** Draws scene data as it is; its table is one key away. Its stretches can be chosen where the page listens. */
export function Picture({ block, choosing, level = 2 }: { block: PictureBlock; choosing?: Choosing; level?: 2 | 3 }) {
  const Title = level === 2 ? 'h2' : 'h3';
  const id = useId().replaceAll(/[^a-zA-Z0-9]/g, '');
  const [asTable, setAsTable] = useState(false);
  const { scene } = block;
  return (
    <figure className="picture">
      <div className="picture-head">
        <Title>{block.title}</Title>
        {scene.table ? (
          <button type="button" className="quiet" aria-expanded={asTable} onClick={() => setAsTable(!asTable)}>
            {asTable ? 'Hide the table' : 'Show as table'}
            <span className="hidden-text">: {block.title}</span>
          </button>
        ) : null}
      </div>
      <div className="scrolls">
        <svg
          viewBox={`0 0 ${scene.width} ${scene.height}`}
          role={choosing && scene.zones?.length ? 'group' : 'img'}
          aria-labelledby={`${id}t ${id}d`}
          preserveAspectRatio="xMidYMid meet"
        >
          <title id={`${id}t`}>{scene.title}</title>
          <desc id={`${id}d`}>{scene.description}</desc>
          <defs>
            <pattern id={`${id}h`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <rect width="6" height="6" className="fill-paper" />
              <path d="M0 0V6" className="stroke-ink" strokeWidth="1" />
            </pattern>
          </defs>
          {scene.marks.map((m, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: marks are drawn in their order and have no name
            <MarkView key={i} mark={m} hatch={`${id}h`} />
          ))}
          {choosing && scene.zones?.length ? (
            <Zones zones={scene.zones} height={scene.height} choosing={choosing} />
          ) : null}
        </svg>
      </div>
      {asTable && scene.table ? <Table block={scene.table} level={3} /> : null}
    </figure>
  );
}
