import { type ReactNode, useId } from 'react';

/** A label with its control; the unit stands beside the name, the hint below. */
export function Field({
  label,
  unit,
  hint,
  whole,
  children,
}: {
  label: string;
  unit?: string;
  hint?: string;
  whole?: boolean;
  children: (ids: { id: string; 'aria-describedby'?: string }) => ReactNode;
}) {
  const id = useId();
  return (
    <div className={whole ? 'field whole' : 'field'}>
      <label className="label" htmlFor={id}>
        {label} {unit ? <span className="unit">{unit}</span> : null}
      </label>
      {children(hint ? { id, 'aria-describedby': `${id}-hint` } : { id })}
      {hint ? (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      ) : null}
    </div>
  );
}

interface InputProps {
  readonly label: string;
  readonly name: string;
  readonly unit?: string;
  readonly hint?: string;
  readonly whole?: boolean;
  readonly type?: 'text' | 'number' | 'date';
  readonly required?: boolean;
  readonly value?: string;
  readonly step?: string;
  readonly min?: string;
  readonly max?: string;
  readonly list?: string;
  readonly maxLength?: number;
  readonly set?: (value: string) => void;
}

/** What no form of this program can mean, refused before it is sent; a field may say less. */
const BOUNDS = {
  text: { maxLength: 200 },
  number: { max: '10000000' },
  date: { min: '1900-01-01', max: '2199-12-31' },
} as const;

/** An input of a form: kept by the browser, or by `value` and `set`. */
export function Input({ label, unit, hint, whole, value, set, type = 'text', ...rest }: InputProps) {
  const held = set ? { value: value ?? '', onChange: (e: { target: { value: string } }) => set(e.target.value) } : {};
  const frame = { label, ...(unit ? { unit } : {}), ...(hint ? { hint } : {}), ...(whole ? { whole } : {}) };
  return (
    <Field {...frame}>
      {(ids) => (
        <input
          {...ids}
          type={type}
          autoComplete="off"
          inputMode={type === 'number' ? 'decimal' : undefined}
          defaultValue={set ? undefined : value}
          {...held}
          {...BOUNDS[type]}
          {...rest}
        />
      )}
    </Field>
  );
}

interface SelectProps {
  readonly label: string;
  readonly name: string;
  readonly options: readonly { readonly value: string; readonly text: string }[];
  readonly value?: string;
  readonly hint?: string;
  readonly required?: boolean;
  readonly set?: (value: string) => void;
}

export function Select({ label, hint, options, value, set, ...rest }: SelectProps) {
  const held = set ? { value: value ?? '', onChange: (e: { target: { value: string } }) => set(e.target.value) } : {};
  return (
    <Field label={label} {...(hint ? { hint } : {})}>
      {(ids) => (
        <select {...ids} defaultValue={set ? undefined : value} {...held} {...rest}>
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

/** Words of more than one line. */
export function Area({ label, hint, ...rest }: { label: string; name: string; hint?: string; required?: boolean }) {
  return (
    <Field label={label} whole {...(hint ? { hint } : {})}>
      {(ids) => <textarea {...ids} rows={3} maxLength={2000} {...rest} />}
    </Field>
  );
}
