import type { AskedSpan } from '../../../sheets/model.ts';
import { Input, Select } from '../../parts/field.tsx';
import { valuesOf } from '../aircraft/forms/read.ts';
import { useWanted } from './use-wanted.ts';

const OTHER = 'between two days';

/** Which days: one of the usual spans, or from one day to another. */
export function SpanChooser({ span }: { span: AskedSpan }) {
  const [asked, want] = useWanted();
  const [from, to] = [asked.from || span.from, asked.to || span.to];
  const usual = span.others.find((o) => o.from === from && o.to === to);
  const choose = (text: string) => {
    const other = span.others.find((o) => o.text === text);
    if (other) want({ from: other.from, to: other.to });
  };
  return (
    <form
      className="span"
      aria-label="Span"
      onSubmit={(e) => {
        e.preventDefault();
        const days = valuesOf(e.currentTarget);
        want({ from: days.text('from') ?? '', to: days.text('to') ?? '' });
      }}
    >
      <Select
        label="Days"
        name="span"
        value={usual?.text ?? OTHER}
        options={[
          ...span.others.map((o) => ({ value: o.text, text: o.text })),
          ...(usual ? [] : [{ value: OTHER, text: OTHER }]),
        ]}
        set={choose}
      />
      <Input key={`from ${from}`} label="From" name="from" type="date" required value={from} />
      <Input key={`to ${to}`} label="To" name="to" type="date" required value={to} />
      <button type="submit">Show these days</button>
    </form>
  );
}
