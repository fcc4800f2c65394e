import { addDays, type Day, earlier, later, parseHours, type record } from '../engine/index.ts';

type Gap = Extract<record.Entry, { kind: 'gap' }>;
/** How far a paper that was found closes a declared gap: as far as its rows reach, or whole. */
export type Closing = 'reach' | 'whole';

/**
 * Entries that correct a declared gap when its paper is found. What the rows do not reach stays a gap; where nothing
 * stays, a period of no stated use stands in its place: the paper is there, and of what its rows do not list it says
 * nothing.
 */
export function closeGap(
  gap: Gap,
  how: Closing,
  reach: { readonly from: Day; readonly to: Day },
  paper: record.EntryInput['paper'],
  evidence: record.Entry['evidence'],
): record.EntryInput[] {
  const [from, to] = [gap.body.from as Day, gap.body.to as Day];
  const id = (n: number): string => `gap-${gap.id}-${n}`;
  const common = { subject: gap.subject, order: gap.order };
  const [first, last] = [later(from, reach.from), earlier(to, reach.to)];
  if (how === 'reach' && first > last) return [];
  const left = (
    how === 'whole'
      ? []
      : [
          { from, to: addDays(first, -1) },
          { from: addDays(last, 1), to },
        ]
  ).filter((x) => x.from <= x.to);
  if (!left.length)
    return [
      {
        ...common,
        id: id(0),
        kind: 'use',
        day: gap.day,
        evidence,
        ...(paper ? { paper } : {}),
        body: { from, to },
        replaces: gap.id,
      },
    ];
  return left.map(
    (x, n): record.EntryInput => ({
      ...common,
      id: id(n),
      kind: 'gap',
      day: gap.day,
      evidence: gap.evidence,
      ...(gap.paper ? { paper: gap.paper } : {}),
      body: { ...gap.body, ...x },
      ...(n === 0 ? { replaces: gap.id } : {}),
    }),
  );
}

/** What was brought forward to a day: the last declared totals before it, and the flights listed since. */
export function broughtForward(
  entries: readonly record.Entry[],
  aircraft: string,
  before: Day,
): { total_s: number | null; landings: number | null; day: Day | null } {
  let total_s: number | null = null;
  let landings: number | null = null;
  let day: Day | null = null;
  for (const e of entries) {
    if (e.subject !== aircraft || e.day >= before) continue;
    if (e.kind === 'flights') {
      if (total_s !== null) total_s += parseHours(e.body.hours_h);
      if (landings !== null) landings = e.body.landings === undefined ? null : landings + e.body.landings;
    } else if (e.kind === 'reading') {
      if (e.body.total_h !== undefined) total_s = parseHours(e.body.total_h);
      if (e.body.landings !== undefined) landings = e.body.landings;
    } else continue;
    day = e.day as Day;
  }
  return { total_s, landings, day };
}
