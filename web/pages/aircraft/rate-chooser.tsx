import { useSearchParams } from 'wouter';

const RATES = ['0', '10', '25', '50', '100', '200'];

/** What if the owner flew more, or less? The answer below follows. */
export function RateChooser({ rate }: { rate: string }) {
  const [, setSearch] = useSearchParams();
  const choose = (value: string) =>
    setSearch(
      (now) => {
        if (value === '') now.delete('rate_h_per_year');
        else now.set('rate_h_per_year', value);
        return now;
      },
      { replace: true },
    );
  return (
    <form className="rates no-print" aria-label="Flying rate" onSubmit={(e) => e.preventDefault()}>
      <label className="choice">
        Flying rate&ensp;
        <select value={rate} onChange={(e) => choose(e.target.value)}>
          <option value="">as read from the record</option>
          {RATES.map((r) => (
            <option key={r} value={r}>
              {r} hours a year
            </option>
          ))}
        </select>
      </label>
    </form>
  );
}
