import { useSearchParams } from 'wouter';
import { Given } from '../../testing/given.tsx';
import { allStories } from '../../testing/story-files.ts';

/** Every part in every state, or one part alone: a page for those who build the program. */
export default function StoriesPage() {
  const [search] = useSearchParams();
  const part = search.get('part');
  const shown = part === null ? allStories : allStories.filter((s) => s.part === part);
  return (
    <main id="main" className="stories">
      <title>Stories - Sparwright</title>
      <h1 className="say">Every part in every state</h1>
      <p className="because">All data on this page is invented.</p>
      <ul>
        {allStories.map((s) => (
          <li key={s.part} className="choice">
            <a href={`?part=${encodeURIComponent(s.part)}`}>{s.part}</a>
          </li>
        ))}
      </ul>
      {shown.map((s) => (
        <section key={s.part} id={s.part}>
          <h2 className="say">{s.part}</h2>
          {s.stories.map((story) => (
            <div key={story.state} data-story={`${s.part}, ${story.state}`}>
              <p className="soft">{story.state}</p>
              <div className="sheet">
                <Given>
                  <story.Draw />
                </Given>
              </div>
            </div>
          ))}
          {Object.entries(s.cannot).map(([state, because]) => (
            <p key={state} className="soft">
              Never {state}: {because}
            </p>
          ))}
        </section>
      ))}
    </main>
  );
}
