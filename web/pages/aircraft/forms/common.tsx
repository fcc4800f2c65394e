import type { Choices } from '../../../api/choices.ts';
import { Input, Select } from '../../../parts/field.tsx';
import type { Values } from './read.ts';
import { given } from './read.ts';

export const EVIDENCE = [
  { value: 'copy', text: 'copy of a paper' },
  { value: 'seen', text: 'seen by us' },
  { value: 'statement', text: 'statement of a person' },
];

export function Day({ choices, label = 'Day' }: { choices: Choices | undefined; label?: string }) {
  return <Input label={label} name="day" type="date" required max={choices?.day ?? ''} value={choices?.day ?? ''} />;
}

/** The part, chosen by name and never by chance; the aircraft itself where its parts are not known. */
export function Part({
  choices,
  aircraft,
  whole,
  hint = 'One entry for each part that was worked on',
}: {
  choices: Choices | undefined;
  aircraft: string;
  whole?: boolean;
  hint?: string;
}) {
  const parts = (choices?.parts ?? []).map((p) => ({ value: p.id, text: p.name }));
  const itself = { value: aircraft, text: 'The aircraft itself' };
  const options =
    parts.length === 0 ? [itself] : [{ value: '', text: 'please choose' }, ...parts, ...(whole ? [itself] : [])];
  return <Select label="Part" name="subject" required options={options} {...(whole ? { hint } : {})} />;
}

export function Paper() {
  return (
    <>
      <Select label="Known from" name="evidence" options={EVIDENCE} />
      <Input label="Paper" name="paper" hint="Title of the book, or who said it" />
      <Input label="Page" name="page" />
      <Input label="Line" name="row" type="number" step="1" min="1" hint="Row of that page" />
    </>
  );
}

export function paperOf(v: Values): { evidence: string; paper?: Record<string, unknown> } {
  const evidence = v.text('evidence') ?? 'statement';
  const title = v.text('paper');
  return title ? { evidence, paper: given({ title, page: v.text('page'), row: v.number('row') }) } : { evidence };
}
