import { useQuery } from '@tanstack/react-query';
import { formulaValue } from '../../../api/directives.ts';
import { useSettled } from '../../../parts/write/settled.ts';
import { useWriter } from './context.tsx';

/** What the formula comes to on the chosen aircraft and each of its parts, while it is typed. */
export function ValueNow({
  text,
  is,
  part,
  unit,
}: {
  text: string;
  is: 'number' | 'condition';
  part: string;
  unit?: string | undefined;
}) {
  const { shop, aircraft } = useWriter();
  const expression = useSettled(text.trim(), 250);
  const looksAt = useSettled(part, 250);
  const value = useQuery({
    queryKey: ['formula value', shop, aircraft, expression, is, looksAt, unit],
    queryFn: () =>
      formulaValue(shop, {
        expression,
        aircraft,
        is,
        ...(looksAt ? { part: looksAt } : {}),
        ...(unit ? { unit } : {}),
      }),
    enabled: expression !== '' && aircraft !== '',
    placeholderData: (last) => last,
    retry: false,
  });
  if (text.trim() === '' || aircraft === '') return null;
  const shown = value.data;
  if (!shown || value.error || shown.problem) return null;
  return (
    <div className="value-now">
      <p className="soft">
        In words: {shown.words}. On <span className="nowrap">{shown.aircraft}</span>:
      </p>
      {shown.parts.length === 0 ? <p className="soft">{shown.empty}</p> : null}
      <dl className="pairs">
        {shown.parts.map((p) => (
          <div key={p.id}>
            <dt>
              {p.name} <small>{p.identity}</small>
            </dt>
            <dd>
              <b>{p.text}</b> <small>{p.because}</small>
            </dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
