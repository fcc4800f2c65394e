import { hoursFromSeconds, parseHours } from '../foundation/convert.ts';
import { daysBetween, parseDay } from '../foundation/day.ts';
import { Refusal } from '../foundation/refusal.ts';
import type { Call } from './call.ts';
import { mostFlown_s } from './ceiling.ts';
import { type EntryInput, zPolicy } from './document.ts';
import { originalWings } from './original-wings.ts';

/** Taken as this old where the caller does not know the year. Stated policy, not a fact. */
export const OLDEST_YEARS = 80;

export interface Called {
  readonly aircraft: string;
  readonly entries: EntryInput[];
  /** Papers to ask for, the most telling first. */
  readonly papersToAsk: string[];
}
type Body<K extends EntryInput['kind']> = Extract<EntryInput, { kind: K }>['body'];
type Evidence = EntryInput['evidence'];

/**
 * The six answers of a caller as entries known as "statement". What he does not know is left open on the worse side:
 * no total bounds nothing but the ceiling; years that no one names may have been any use; a wing that may have been
 * changed may have come from a donor as old as the aircraft.
 *
 * The year built stands for its first day. Two wings with an inboard spar each are opened, believed original.
 * @throws Refusal `record.period-reversed` if it was built after the day of the call; `record.call-impossible` for a
 *   total beyond 24 hours a day
 */
export function entriesFromCall(call: Call): Called {
  const slug = (call.serial ?? call.registration).replace(/[^A-Za-z0-9.-]/g, '-').replace(/^-+/, '') || 'unknown';
  const aircraft = `aircraft:${slug}`;
  const year = typeof call.built_year === 'number' ? call.built_year : Number(call.day.slice(0, 4)) - OLDEST_YEARS;
  const built = parseDay(`${year}-01-01`);
  if (built > call.day)
    throw new Refusal('record.period-reversed', {
      given: `built in ${year}, called on ${call.day}`,
      allowed: 'a year not after the day of the call',
      remedy: 'Correct the year',
    });
  const stated_h =
    call.total_h === undefined || call.total_h === 'unknown' ? 0 : hoursFromSeconds(parseHours(call.total_h));
  const days = Math.max(1, daysBetween(built, call.day));
  if (stated_h > days * 24)
    throw new Refusal('record.call-impossible', {
      given: `${call.total_h} h since ${built}`,
      allowed: `at most ${days * 24} h: no aircraft flies more than 24 hours a day`,
      remedy: 'Ask again for the total and the year built',
    });
  const paper = { title: `Telephone, ${call.caller ?? 'the caller'}, ${call.day}` };
  const entries: EntryInput[] = [];
  const papers: string[] = [];
  const put = <K extends EntryInput['kind']>(
    kind: K,
    subject: string,
    day: string,
    body: Body<K>,
    evidence: Evidence = 'statement',
    note?: string,
  ) =>
    entries.push({
      id: `call:${slug}:${call.day}:${entries.length + 1}`,
      subject,
      kind,
      day,
      evidence,
      paper,
      ...(note ? { note } : {}),
      body,
    } as EntryInput);
  const name = call.registration;

  const yearKnown = typeof call.built_year === 'number';
  put(
    'aircraft',
    aircraft,
    built,
    { registration: name, type: call.type, model: call.model, serial: call.serial ?? 'not stated', built },
    yearKnown ? 'statement' : 'assumed',
  );
  if (!yearKnown || !call.serial) papers.push(`Data plate of ${name}: serial and year built`);
  wings(call, aircraft, built, put, papers);

  const total = call.total_h === undefined || call.total_h === 'unknown' ? null : call.total_h;
  const landings = typeof call.landings === 'number' ? call.landings : null;
  if (total !== null || landings !== null)
    put(
      'reading',
      aircraft,
      call.day,
      { ...(total === null ? {} : { total_h: total }), ...(landings === null ? {} : { landings }) },
      'statement',
      `Read from: ${call.meter ?? 'not stated'}`,
    );
  if (total === null || call.meter !== 'book')
    papers.push(`Last page of the logbook of ${name}, with the total and its meter`);
  if (landings === null) papers.push(`Any count of landings of ${name}`);

  statedUses(call, aircraft, built, put);
  papers.push(`Rental, school or club papers of ${name}: use by year`);
  if (call.missing_books === undefined || call.missing_books === 'unknown') {
    put('gap', aircraft, built, {
      from: built,
      to: call.day,
      because: 'Known only from a telephone call',
      paper_wanted: `Logbooks of ${name}`,
    });
    papers.unshift(`All logbooks of ${name}`);
  } else
    for (const { from_year, to_year } of call.missing_books) {
      const from = from_year <= year ? built : `${from_year}-01-01`;
      const to = `${to_year}-12-31` > call.day ? call.day : `${to_year}-12-31`;
      if (from > to) continue;
      const wanted = `Logbook of ${name}, ${from_year} to ${to_year}`;
      put('gap', aircraft, from, {
        from,
        to,
        because: 'The caller says that this book is missing',
        paper_wanted: wanted,
      });
      papers.unshift(wanted);
    }
  if (Array.isArray(call.kits))
    for (const kit of call.kits)
      put('kit', aircraft, call.day, { kit, action: 'fitted' }, 'statement', 'Since when is not known');
  else papers.push(`Modification papers of ${name}: kits fitted`);
  if (call.repairs) put('repair', aircraft, call.day, { repair: 'as_stated', detail: call.repairs });
  else papers.push(`Work reports of ${name}: damage and repairs of the wing`);
  return { aircraft, entries, papersToAsk: papers };
}

type Put = <K extends EntryInput['kind']>(
  kind: K,
  subject: string,
  day: string,
  body: Body<K>,
  evidence?: Evidence,
  note?: string,
) => void;

function wings(call: Call, aircraft: string, built: ReturnType<typeof parseDay>, put: Put, papers: string[]): void {
  const changed = call.wing_changed ?? 'unknown';
  const policy = zPolicy.parse({});
  const donor_h = Math.ceil(hoursFromSeconds(mostFlown_s(policy, daysBetween(built, call.day))));
  for (const p of originalWings(aircraft)) {
    put('part', p.id, built, { part: p.part, hand: p.hand, built }, 'assumed');
    if (changed !== 'no')
      put(
        'opening',
        p.id,
        built,
        {
          basis: 'shop_policy',
          hours_h: { low_h: 0, high_h: donor_h },
          landings: { low: 0, high: Math.min(10_000_000, Math.ceil(donor_h * policy.ceiling_landings_per_hour)) },
          because:
            changed === 'yes'
              ? 'A wing was changed; its earlier life is not known'
              : 'Whether a wing was changed is not known',
        },
        'assumed',
      );
    put('fitment', p.id, built, { into: p.into, place: p.place }, changed === 'no' ? 'statement' : 'assumed');
  }
  if (changed === 'yes')
    papers.push(`Work report of the wing change of ${call.registration}, and the record of the donor`);
  else papers.push(`Spar stamps of ${call.registration}, left and right, seen on the aircraft`);
}

/** Years with the uses named for them: each may have been flown then, or private. Years that overlap are joined. */
function statedUses(call: Call, aircraft: string, built: string, put: Put): void {
  if (!Array.isArray(call.uses)) return;
  const byYear = new Map<number, Set<string>>();
  for (const u of call.uses)
    for (let y = u.from_year; y <= u.to_year; y++) byYear.set(y, (byYear.get(y) ?? new Set<string>()).add(u.use));
  const years = [...byYear].map(([y, uses]) => ({ y, uses: [...uses].sort() })).sort((a, b) => a.y - b.y);
  for (let i = 0; i < years.length; ) {
    let k = i;
    while (years[k + 1]?.y === years[k]!.y + 1 && years[k + 1]!.uses.join() === years[i]!.uses.join()) k++;
    const from = `${years[i]!.y}-01-01` < built ? built : `${years[i]!.y}-01-01`;
    const to = `${years[k]!.y}-12-31` > call.day ? call.day : `${years[k]!.y}-12-31`;
    if (from <= to)
      put('use', aircraft, from, { from, to, split: years[i]!.uses.map((use) => ({ use })), rest: 'private' });
    i = k + 1;
  }
}
