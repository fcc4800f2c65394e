import type { Manual, ManualPart } from '../../../sheets/manual.ts';

const anchor = (title: string) => title.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');

/** The manual: its sections named on top, each with its pictures. */
export function ManualView({ manual }: { manual: Manual }) {
  const named = manual.sections.filter((s) => s.title);
  return (
    <article className="manual">
      <h1 className="say">{manual.title}</h1>
      <nav aria-label="Sections">
        <ul>
          {named.map((s) => (
            <li key={s.title}>
              <a href={`#${anchor(s.title)}`}>{s.title}</a>
            </li>
          ))}
        </ul>
      </nav>
      {manual.sections.map((s) => (
        <section key={s.title} id={s.title ? anchor(s.title) : undefined} className={s.title ? 'sheet' : undefined}>
          {s.title ? <h2>{s.title}</h2> : null}
          {s.parts.map((p, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a section never move
            <Part key={i} part={p} />
          ))}
        </section>
      ))}
    </article>
  );
}

function Part({ part }: { part: ManualPart }) {
  if (part.is === 'paragraph') return <p>{part.text}</p>;
  if (part.is === 'picture') return <img src={part.address} alt={part.text} loading="lazy" />;
  return (
    <ul>
      {part.items.map((item) => (
        <li key={item}>{item}</li>
      ))}
    </ul>
  );
}
