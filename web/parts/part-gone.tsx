/** A part of the program that is fetched when it is needed, and did not come: it was started anew, or is gone. */
export function PartGone() {
  return (
    <main id="main">
      <div className="notice" role="alert">
        <p>
          <strong>This part of the program did not come.</strong> It was started anew, or it is gone. Nothing that was
          typed is lost.
        </p>
        <div className="actions">
          <button type="button" onClick={() => window.location.reload()}>
            Load the page again
          </button>
        </div>
      </div>
    </main>
  );
}
