import { Field, Input } from '../../parts/field.tsx';
import { FIELDS, type FieldOf } from './fields.ts';

interface Props {
  readonly kind: string;
  readonly texts: Readonly<Record<string, string>>;
  readonly set: (texts: Readonly<Record<string, string>>) => void;
  /** What a part can sit in: for a fitment. */
  readonly places: readonly { readonly id: string; readonly name: string }[];
  readonly uses: readonly string[];
}

/** The fields of an entry of one kind, each with its unit. */
export function BodyFields({ kind, texts, set, places, uses }: Props) {
  return (FIELDS[kind] ?? [])
    .map((x) => {
      const value = texts[x.key] ?? '';
      const change = (v: string) => set({ ...texts, [x.key]: v });
      if (x.is === 'choice') return <Choice key={x.key} field={x} value={value} set={change} places={places} />;
      return (
        <Input
          key={x.key}
          label={x.label}
          name={x.key}
          type={x.is === 'day' ? 'date' : 'text'}
          {...(x.unit ? { unit: x.unit } : {})}
          {...(x.hint ? { hint: x.hint } : {})}
          {...(x.key === 'use' || x.key === 'rest' ? { list: `uses-${kind}` } : {})}
          {...(x.is === 'text' ? { maxLength: 2000 } : {})}
          value={value}
          set={change}
        />
      );
    })
    .concat(
      <datalist id={`uses-${kind}`} key="uses">
        {uses.map((u) => (
          <option key={u} value={u.replaceAll('_', ' ')} />
        ))}
      </datalist>,
    );
}

function Choice({
  field,
  value,
  set,
  places,
}: {
  field: FieldOf;
  value: string;
  set: (v: string) => void;
  places: Props['places'];
}) {
  const options = field.choices
    ? field.choices.map((c) => ({ value: c, text: c.replaceAll('_', ' ') }))
    : places.map((p) => ({ value: p.id, text: p.name }));
  return (
    <Field label={field.label} {...(field.hint ? { hint: field.hint } : {})}>
      {(ids) => (
        <select {...ids} name={field.key} value={value} onChange={(e) => set(e.target.value)}>
          <option value="">{field.required ? 'please choose' : 'not stated'}</option>
          {options.map((o) => (
            <option key={o.value} value={o.value}>
              {o.text}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
