import type { KeyValueBlock } from '../../sheets/model.ts';
import { CellView } from './cell.tsx';

export function KeyValue({ block }: { block: KeyValueBlock }) {
  return (
    <>
      <h2>{block.title}</h2>
      {block.pairs.length === 0 ? (
        <p className="empty">Nothing is recorded here yet.</p>
      ) : (
        <dl className="pairs">
          {block.pairs.map((p) => (
            <PairView key={p.key} pair={p} />
          ))}
        </dl>
      )}
    </>
  );
}

function PairView({ pair }: { pair: KeyValueBlock['pairs'][number] }) {
  return (
    <>
      <dt>{pair.key}</dt>
      <dd>
        <CellView cell={pair.cell} />
      </dd>
    </>
  );
}
