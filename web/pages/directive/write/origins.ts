import { isTable, type Json } from '../../../parts/write/json.ts';

/** What a limit is counted from. */
export const ORIGINS = [
  { value: 'new', text: 'since new' },
  { value: 'effective', text: 'after the effective date' },
  { value: 'last_look', text: 'since the last look' },
  { value: 'finding', text: 'since the finding' },
  { value: 'part_fitted', text: 'since the part was first fitted' },
  { value: 'kit_fitted', text: 'since a kit was fitted' },
  { value: 'event', text: 'since an event' },
  { value: 'effective_of', text: 'after the effective date of another directive' },
] as const;
export type OriginKind = (typeof ORIGINS)[number]['value'];

export function originKind(origin: Json | undefined): OriginKind | '' {
  if (typeof origin === 'string') return ORIGINS.find((o) => o.value === origin)?.value ?? '';
  if (!isTable(origin)) return '';
  return ORIGINS.find((o) => Object.hasOwn(origin, o.value))?.value ?? '';
}

/** An origin of a kind with nothing filled in; a look is first taken to be one of this very action. */
function blankOrigin(kind: OriginKind, number: string, action: string): Json {
  switch (kind) {
    case 'new':
    case 'effective':
    case 'part_fitted':
      return kind;
    case 'last_look':
      return { last_look: [{ directive: number, action }] };
    case 'finding':
      return { finding: { action, finding: '' } };
    case 'kit_fitted':
    case 'event':
      return { [kind]: '' };
    case 'effective_of':
      return { effective_of: { directive: '', on: '' } };
  }
}

export const asOrigin = (origin: Json | undefined, kind: OriginKind, number: string, action: string): Json =>
  originKind(origin) === kind && origin !== undefined ? origin : blankOrigin(kind, number, action);
