import type { Stories } from '../../parts/story.ts';

const files = import.meta.glob<{ default: Stories }>('../../**/*.stories.tsx', { eager: true });
const all = Object.values(files)
  .map((f) => f.default)
  .sort((a, b) => a.part.localeCompare(b.part));

/** Every part in every state: a page for those who build the program. */
export default function StoriesPage() {
  return (
    <main id="main">
      <title>Stories - Sparwright</title>
      <h1 className="say">Every part in every state</h1>
      <p className="because">All data on this page is invented.</p>
      <ul>
        {all.map((s) => (
          <li key={s.part} className="choice">
            <a href={`#${s.part}`}>{s.part}</a>
          </li>
        ))}
      </ul>
      {all.map((s) => (
        <section key={s.part} id={s.part}>
          <h2 className="say">{s.part}</h2>
          {s.stories.map((story) => (
            <div key={story.state} data-story={`${s.part} ${story.state}`}>
              <p className="soft">{story.state}</p>
              <div className="sheet">
                <story.Draw />
              </div>
            </div>
          ))}
        </section>
      ))}
    </main>
  );
}
