/** How many rows are shown, and what bites now among those that are not. */
export function Shown({
  shown,
  of,
  hidden,
  filtered,
  all,
}: {
  shown: number;
  of: number;
  hidden: string;
  filtered: boolean;
  all: () => void;
}) {
  return (
    <div className="shown">
      <p role="status">
        {shown === of ? `All ${figure(of)} shown.` : `${figure(shown)} of ${figure(of)} shown.`}
        {hidden ? (
          <strong>
            {' '}
            {hidden} {/^1 \w+$/.test(hidden) ? 'is' : 'are'} hidden by the filter.
          </strong>
        ) : null}
      </p>
      {filtered ? (
        <button type="button" className="quiet" onClick={all}>
          Show all
        </button>
      ) : null}
    </div>
  );
}

const figure = (n: number): string => n.toLocaleString('en').replaceAll(',', '\u202f');
