import type { TitleBlock as Fields } from '../../sheets/model.ts';

/** The ruled block that says what this sheet is about. */
export function TitleBlock({ block, number }: { block: Fields; number?: string | undefined }) {
  if (block.fields.length === 0 && !number) return null;
  return (
    <dl className="title-block">
      {block.fields.map((f) => (
        <div key={f.label}>
          <dt>{f.label}</dt>
          <dd>
            <b>{f.value}</b>
            {f.small ? <span>{f.small}</span> : null}
          </dd>
        </div>
      ))}
      {number && !block.fields.some((f) => f.label === 'Working kept under') ? (
        <div>
          <dt>Working kept under</dt>
          <dd>
            <b>{number}</b>
          </dd>
        </div>
      ) : null}
    </dl>
  );
}
