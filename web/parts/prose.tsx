import type { ProseBlock } from '../../sheets/model.ts';

export function Prose({ block }: { block: ProseBlock }) {
  return (
    <div className="prose">
      {block.title ? <h2>{block.title}</h2> : null}
      {block.paragraphs.map((p, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: paragraphs of one text never move
        <p key={i}>{p}</p>
      ))}
      {block.list?.length ? (
        <ul className={block.list.every((item) => /^\d+\. /.test(item)) ? 'numbered' : undefined}>
          {block.list.map((item, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: lines of one list never move
            <li key={i}>{item}</li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}
