/** Somebody else kept another issue since this form was opened: nothing is written over it unless a person says so. */
export function KeptMeanwhile({ given, take, over }: { given: string; take: () => void; over: () => void }) {
  return (
    <div className="notice" role="alert">
      <p>
        <strong>{given}.</strong> What stands here is as you left it. Nothing is written over the other one unless you
        say so; both stay in the log.
      </p>
      <div className="actions">
        <button type="button" onClick={take}>
          Take the other one into this form
        </button>
        <button type="button" onClick={over}>
          Keep this one as the newest issue
        </button>
      </div>
    </div>
  );
}
