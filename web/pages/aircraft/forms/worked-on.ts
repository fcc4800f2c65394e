import type { Choices } from '../../../api/choices.ts';
import type { NewEntry } from '../../../api/entries.ts';
import { paperOf } from './common.tsx';
import { given, newId, slugOf, type Values } from './read.ts';

type Part = Choices['parts'][number];
export const BOTH = 'both';

/** What an action may be recorded on: each part that it looks at, both sides where there is one of each, never a whole for its parts. */
export function workable(choices: Choices | undefined, looksAt: string | undefined, aircraft: string) {
  if (!looksAt) return [];
  if (looksAt === 'aircraft') return [{ value: aircraft, text: 'The aircraft itself' }];
  const parts = (choices?.parts ?? []).filter((p) => p.what === looksAt);
  const pair = pairOf(parts);
  return [
    { value: '', text: 'please choose' },
    ...parts.map((p) => ({ value: p.id, text: p.name })),
    ...(pair ? [{ value: BOTH, text: 'Both sides: the paper names both' }] : []),
  ];
}
export function pairOf(parts: readonly Part[]): readonly [Part, Part] | null {
  const [left, right] = (['left', 'right'] as const).map((h) => parts.filter((p) => p.hand === h));
  return left?.length === 1 && right?.length === 1 && parts.length === 2 ? [left[0]!, right[0]!] : null;
}
/** The parts that the person chose. */
export function chosenParts(
  choices: Choices | undefined,
  looksAt: string | undefined,
  chosen: string,
): readonly Part[] {
  const parts = (choices?.parts ?? []).filter((p) => p.what === looksAt);
  return chosen === BOTH ? (pairOf(parts) ?? []) : parts.filter((p) => p.id === chosen);
}

/** One entry for each side that was worked on, each with its own finding; the side is named, so that none counts for the other. */
export function accomplishments(
  v: Values,
  on: readonly { readonly id: string; readonly hand: Part['hand'] }[],
  about: { readonly directive: string; readonly issue: number },
): NewEntry[] {
  if (on.length === 0) throw new Error('Say which side was worked on: one entry is written for each.');
  const name = v.text('signer');
  if (v.text('certificate') !== undefined && name === undefined)
    throw new Error('Say who signed: a certificate without a name stands for nobody.');
  return on.map(({ id, hand }) => {
    const finding = slugOf(v.text(`finding ${id}`) ?? '');
    if (finding === '') throw new Error('Say in letters what was found on each side: none, or for example crack.');
    return {
      id: newId(),
      subject: id,
      day: v.text('day') ?? '',
      kind: 'accomplished',
      ...paperOf(v),
      body: given({
        ...about,
        action: v.text('action'),
        finding,
        method: v.text('method'),
        total_h: v.number('total_h'),
        landings: v.number('landings'),
        paper_names: on.length > 1 ? BOTH : hand === 'none' ? undefined : hand,
        signer: name ? given({ name, certificate: v.text('certificate') }) : undefined,
      }),
    };
  });
}
