/** How many rows are shown, and what bites now among those that are not. */
export function Shown({
  shown,
  of,
  hidden,
  filtered,
  dated,
  all,
}: {
  shown: number;
  of: number;
  hidden: string;
  filtered: boolean;
  /** Only what has something due within certain days: its row may name another day first. */
  dated: boolean;
  all: () => void;
}) {
  return (
    <div className="shown">
      <p role="status">
        {shown === of ? `${figure(of)} aircraft.` : `${figure(shown)} of ${figure(of)} aircraft shown.`}
        {hidden ? (
          <strong>
            {' '}
            {hidden} {/^1 \w+$/.test(hidden) ? 'is' : 'are'} hidden by the filter.
          </strong>
        ) : null}
      </p>
      {dated && shown > 0 ? (
        <p className="soft">Each has something due in these days; its row says what bites first.</p>
      ) : null}
      {filtered ? (
        <button type="button" className="quiet" onClick={all}>
          Show all
        </button>
      ) : null}
    </div>
  );
}

const figure = (n: number): string => n.toLocaleString('en').replaceAll(',', '\u202f');
