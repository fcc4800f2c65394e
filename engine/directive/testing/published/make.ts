import type { DirectiveInput } from '../../document.ts';

export type ActionInput = DirectiveInput['actions'][number];
export type Case = DirectiveInput['cases'][number];
type Serials = NonNullable<NonNullable<DirectiveInput['affects']['models']>[number]['serials']>;

export const FAA = {
  sparwright: 'directive/1',
  issue: 1,
  authority: 'Federal Aviation Administration',
  rank: 'directive',
  known: 'read',
} as const;
export const CASA = { ...FAA, authority: 'Civil Aviation Safety Authority' } as const;

/** One row of a table of lives: hours of the part since new, for a model and its serials. */
export const life = (
  id: string,
  model: string,
  serials: Serials,
  hours_h: number,
  more: Partial<NonNullable<ActionInput['affects']>> & { except?: Serials } = {},
): ActionInput => {
  const { except, ...group } = more;
  return {
    id,
    title: `Replace the lower spar cap at ${hours_h} h`,
    does: 'replace',
    looks_at: 'spar_cap',
    affects: { models: [{ model, serials, ...(except ? { except } : {}) }], ...group },
    first: { hours_h, is: 'at', of: 'part', since: 'new' },
    missing_papers: 'bounds',
  };
};
export const one = (
  name: string,
  action: string,
  day: string,
  serial: string,
  model: string,
  facts: Case['facts'],
  standing: Case['expect']['standing'],
  more: Partial<Case> = {},
): Case => ({ name, action, day, serial, model, facts, expect: { standing }, ...more }) as Case;

/** A row of a table of lives at its edges: serials just in and just out, the limit at and a tenth past. */
export const edges = (
  action: string,
  day: string,
  model: string,
  hours_h: number,
  just: { in: string[]; out: string[] },
): Case[] => {
  const at = (serial: string, h: number, standing: Case['expect']['standing']) =>
    one(`${model} ${serial} at ${h} h: ${standing}`, action, day, serial, model, { 'hours.total': h }, standing);
  return [
    ...just.in.map((s) => at(s, hours_h, 'due')),
    ...just.out.map((s) => at(s, hours_h, 'not affected')),
    at(just.in[0]!, Math.round(hours_h * 10 - 1) / 10, 'soon due'),
    at(just.in.at(-1)!, Math.round(hours_h * 10 + 1) / 10, 'overdue'),
  ];
};
