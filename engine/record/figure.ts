import { type Bounds, isExact } from '../foundation/bounds.ts';
import type { Day } from '../foundation/day.ts';
import { weakestEvidence } from '../foundation/provenance.ts';
import { Refusal } from '../foundation/refusal.ts';
import { linearExtremes, type Region } from '../foundation/region/index.ts';
import { type Step, type Worked, type WorkingUnit, worked } from '../foundation/working.ts';
import type { Facts, Gap, Life, RecordModel } from './model.ts';
import type { Opened } from './opening.ts';
import type { Presence } from './stays.ts';
import type { storyOf } from './story.ts';

interface Asked {
  readonly model: RecordModel;
  readonly story: ReturnType<typeof storyOf>;
  readonly region: Region;
  readonly gaps: readonly Gap[];
  readonly at: (day: Day) => Facts;
  readonly lastReading: Life['lastReading'];
  readonly present: readonly Presence[];
  readonly opening: Opened | null;
}

export const unitOfFact = (fact: string): WorkingUnit =>
  fact === 'age.days'
    ? 'days'
    : fact.startsWith('hours.') || fact.endsWith('.hours')
      ? 'h'
      : fact.startsWith('landings.') || fact.endsWith('.landings')
        ? 'landings'
        : 'count';

/**
 * Least and greatest value of one fact over the possible histories, with the entries and gaps behind it.
 * @throws Refusal `record.fact-unknown`
 */
export function figureOf(asked: Asked, fact: string, day: Day): Worked<Bounds> {
  const form = asked.at(day)[fact];
  if (!form)
    throw new Refusal('record.fact-unknown', {
      given: `the fact "${fact}"`,
      allowed: Object.keys(asked.at(day)).slice(0, 12).join(', '),
      remedy: 'Use one of these names; a figure since an event exists only where the event is recorded',
    });
  const { low, high } = linearExtremes(form, asked.region);
  const value = { low: low.value, high: high.value };
  const unit = unitOfFact(fact);
  const byId = entryIndex(asked.model);
  const step = (s: Omit<Step, 'evidence'> & { entries: readonly string[] }): Step => {
    const known = s.entries.flatMap((id) => byId.get(id)?.evidence ?? []);
    return known.length > 0 ? { ...s, evidence: weakestEvidence(known) } : s;
  };
  const steps: Step[] = [];
  if (asked.lastReading && unit !== 'days')
    steps.push(
      step({
        symbol: 'R',
        meaning: `Last reading of the aircraft, ${asked.lastReading.day}`,
        formula: 'as declared',
        value: unit === 'landings' ? (asked.lastReading.landings ?? 'not counted') : asked.lastReading.total_s,
        unit: unit === 'landings' ? 'landings' : 's',
        entries: [asked.lastReading.entry],
      }),
    );
  for (const p of asked.present.slice(1))
    steps.push(
      step({
        symbol: '',
        meaning: `Sat in ${p.id}`,
        formula: `from ${p.from.day} to ${p.to?.day ?? 'now'}`,
        value: p.from.day,
        unit: '',
        entries: p.entries,
      }),
    );
  if (asked.opening && asked.opening.entries.length > 0)
    steps.push(
      step({
        symbol: 'O',
        meaning: 'Lived before this record',
        formula: 'opening',
        value: 'see entry',
        unit: '',
        entries: asked.opening.entries,
      }),
    );
  for (const c of fact.startsWith('inspections.') ? asked.story.counted : [])
    if (c.entry.day <= day && (c.kinds === null || c.kinds.includes(fact.slice('inspections.'.length))))
      steps.push(
        step({
          symbol: '',
          meaning: `"${c.entry.body.wording}", ${c.entry.day}`,
          formula:
            c.kinds === null
              ? 'no ruling: may count or not'
              : c.ruling
                ? `ruled by ${c.ruling.body.by}: ${c.ruling.body.because}`
                : 'as the entry says',
          value: c.kinds === null ? { low: 0, high: 1 } : 1,
          unit: 'count',
          entries: [c.entry.id, ...(c.ruling ? [c.ruling.id] : [])],
        }),
      );
  for (const e of asked.story.events)
    if (fact.split('.')[1] === e.what)
      steps.push(
        step({
          symbol: '',
          meaning: `${e.what}`,
          formula: 'as recorded',
          value: e.moment.day,
          unit: '',
          entries: [e.entry],
        }),
      );
  const touched = new Set(form.terms.map(([v]) => v));
  for (const g of asked.gaps)
    if (g.variables.some((v) => touched.has(v)))
      steps.push(
        step({
          symbol: 'G',
          meaning: `${g.because}, ${g.from} to ${g.to}`,
          formula: `open: ${g.what.join(', ')}`,
          value: `wanted: ${g.papers[0] ?? 'any paper'}`,
          unit: '',
          entries: byId.has(g.id) ? [g.id] : [],
        }),
      );
  steps.push({
    symbol: fact,
    meaning: `Over all histories that agree with the papers, on ${day}`,
    formula: 'least to greatest',
    value: isExact(value) ? value.low : value,
    unit,
  });
  const warnings =
    low.proven === 'exact' && high.proven === 'exact'
      ? []
      : ['An end of these bounds is an enclosure: no history goes further, but whether one gets there is not settled.'];
  return worked(value, steps, warnings);
}

const indices = new WeakMap<RecordModel, ReadonlyMap<string, RecordModel['entries'][number]>>();
function entryIndex(model: RecordModel) {
  let map = indices.get(model);
  if (!map) {
    map = new Map(model.entries.map((e) => [e.id, e]));
    indices.set(model, map);
  }
  return map;
}
