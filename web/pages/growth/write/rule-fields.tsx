import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { ChoiceIn } from '../../../parts/write/inputs.tsx';
import { at, tableOf, textOf } from '../../../parts/write/json.ts';
import { SourceIn } from '../../../parts/write/source-in.tsx';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';

const R = ['rule'] as const;
const NAMES = [
  { value: 'half', text: 'at half of the growth' },
  { value: 'third', text: 'at a third of the growth' },
  { value: 'own', text: 'at shares of our own' },
];

/** What makes look intervals of the hours. */
export function RuleFields() {
  const { draft, send } = useForm();
  const own = textOf(at(draft, [...R, 'name'])) === 'own';
  return (
    <section className="sheet part" aria-labelledby="rule" data-place="rule" tabIndex={-1}>
      <h2 id="rule">The rule</h2>
      <WrongAt path={R} />
      <div className="fields">
        <ChoiceIn
          path={[...R, 'name']}
          label="Looks come"
          options={NAMES}
          choose={(v) => {
            const { first: _f, repeat: _r, ...rest } = tableOf(at(draft, R));
            send({ does: 'put', path: R, value: { ...rest, name: v } });
          }}
        />
        {own ? (
          <>
            <FigureOf path={[...R, 'first']} label="First look" hint="Share of the hours from first flaw to critical" />
            <FigureOf
              path={[...R, 'repeat']}
              label="Then again"
              hint="Share of the hours from detectable to critical"
            />
          </>
        ) : null}
      </div>
      <SourceIn path={[...R, 'from']} of="the rule" />
    </section>
  );
}
