import { daysInWords, type Said } from './said.ts';

/** The rule in plain sentences, to be held against the official text clause by clause. */
export function ReadBackView({ said, old }: { said: readonly Said[] | null; old: boolean }) {
  if (!said) return <p className="empty">It is read back here once the fields that every rule has are filled in.</p>;
  return (
    <>
      {old ? <p className="soft">As it stood before: what is written now cannot be read back yet.</p> : null}
      <Sentences said={said} />
    </>
  );
}

function Sentences({ said }: { said: readonly Said[] }) {
  return (
    <div className="prose">
      {said.map((s, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two actions may bear one title; their order is the rule's
        <div key={i}>
          <h3>{s.heading}</h3>
          <ul>
            {s.sentences.map((x, n) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: sentences stand in the order of the rule
              <li key={n}>{daysInWords(x)}</li>
            ))}
          </ul>
        </div>
      ))}
    </div>
  );
}

/** What a next issue says differently from the one in force. */
export function Changes({ gone, come, of }: { gone: readonly Said[]; come: readonly Said[]; of: string }) {
  if (gone.length + come.length === 0) return <p className="soft">It says the same as {of}.</p>;
  return (
    <>
      {come.length ? (
        <>
          <h3>It now says</h3>
          <Sentences said={come} />
        </>
      ) : null}
      {gone.length ? (
        <>
          <h3>It no longer says</h3>
          <Sentences said={gone} />
        </>
      ) : null}
    </>
  );
}
