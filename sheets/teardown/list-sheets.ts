import type { Day, record } from '../../engine/index.ts';
import { count, day as dayWords, number } from '../display.ts';
import { aircraftBlock, caution, emptySheet, f, type ShopNamed, t } from '../frame.ts';
import { quantity, words } from '../measure.ts';
import type { Cell, FindingsBlock, Sheet, Span, TableBlock } from '../model.ts';
import { left, right } from './tables.ts';

interface Listed {
  readonly name: string;
  readonly title: string;
  readonly on: Day;
  readonly by: string;
  readonly entry: number;
  readonly invented: boolean;
  /** What is wrong with it, as a sentence; empty if nothing is. */
  readonly finding: string;
}
export interface JobListed extends Listed {
  /** "replace the left inboard spar"; empty where it cannot be read. */
  readonly targets: string;
  readonly side: string;
  readonly aircraft: { readonly id: string; readonly registration: string } | null;
  readonly steps: number;
  readonly done: number;
  /** First day of work. */
  readonly begins: Day | null;
  /** P80 of the draws, or the end at the likely times; the early end where a part on order is waited for; null where no floor is named. */
  readonly ends: Day | null;
  /** The late end where a part on order is waited for; else null. */
  readonly latest: Day | null;
}
export interface MapListed extends Listed {
  readonly models: readonly string[];
  readonly parts: number;
  readonly joins: number;
}
export interface FloorListed extends Listed {
  readonly crew: number;
  readonly jigs: number;
}
export interface TeardownListInput {
  readonly shop: ShopNamed & { readonly id: string };
  readonly day: Day;
  readonly jobs: readonly JobListed[];
  readonly maps: readonly MapListed[];
  readonly floors: readonly FloorListed[];
}
type Shop = TeardownListInput['shop'];
const href = (shop: Shop, ...path: string[]): string =>
  ['', shop.id, 'teardown', ...path].map(encodeURIComponent).join('/');
const kept = (r: Listed): Cell => words(dayWords(r.on), `${r.by}, entry ${r.entry}${r.invented ? ', invented' : ''}`);
const nothing: Cell = { is: 'nothing' };
const dayCell = (d: Day | null): Cell => (d ? { is: 'day', day: d, text: dayWords(d) } : nothing);
const endCell = ({ ends, latest }: JobListed): Cell =>
  ends && latest ? words(dayWords(ends), `to ${dayWords(latest)}, as the part comes`) : dayCell(ends);
/** " about 3 Dec 2026", " between about 29 Dec 2026 and 2 Mar 2027" */
function endSpans({ ends, latest }: JobListed): Span[] {
  if (!ends) return [];
  if (!latest) return [t(' about '), f(dayWords(ends))];
  return [t(' between about '), f(dayWords(ends)), t(' and '), f(dayWords(latest))];
}

/** What the shop has to take apart: jobs, the maps they rest on, the floors they are done on. */
export function teardownListSheet(q: TeardownListInput): Sheet {
  const open = q.jobs.filter((j) => j.done < j.steps || j.finding);
  const next = [...q.jobs].filter((j) => j.ends && j.done < j.steps).sort((a, b) => (a.ends! < b.ends! ? -1 : 1))[0];
  return {
    ...emptySheet('teardown', 'Teardown', q.day, q.shop.invented === true),
    titleBlock: {
      fields: [
        { label: 'Shop', value: q.shop.name },
        { label: 'On', value: dayWords(q.day) },
      ],
    },
    answer: q.jobs.length
      ? [
          f(count(open.length, 'job')),
          t(` of ${number(q.jobs.length)} ${open.length === 1 ? 'is' : 'are'} not finished`),
          ...(next ? [t(`; the next to end is ${next.title},`), ...endSpans(next)] : []),
          t('.'),
        ]
      : [t('The shop keeps '), f('no job'), t(' yet.')],
    because: q.maps.length
      ? `${count(q.maps.length, 'structure map')} and ${count(q.floors.length, 'floor')} are kept. A job names a map, a target and a floor.`
      : 'A structure map comes first: the parts of a wing and the rows that hold them. A job rests on it.',
    blocks: [jobsTable(q.shop, q.jobs), mapsTable(q.shop, q.maps), floorsTable(q.shop, q.floors), findings(q)],
    caution: caution(q.shop.invented === true),
  };
}
function jobsTable(shop: Shop, jobs: readonly JobListed[], empty = 'None yet: enter the first job.'): TableBlock {
  return {
    block: 'table',
    title: 'Jobs',
    linked: true,
    columns: [
      left('job', 'Job'),
      left('targets', 'To'),
      left('aircraft', 'Aircraft'),
      right('done', 'Steps done'),
      left('begins', 'Begins'),
      left('ends', 'Ends about'),
      left('kept', 'Kept'),
    ],
    rows: jobs.map((j) => ({
      id: j.name,
      cells: {
        job: { is: 'link', text: j.title, href: href(shop, 'jobs', j.name) },
        targets: j.targets ? words(j.targets, j.side === 'both' ? 'both wings' : `${j.side} wing`) : nothing,
        aircraft: j.aircraft
          ? {
              is: 'link',
              text: j.aircraft.registration,
              href: ['', shop.id, 'aircraft', j.aircraft.id, 'teardown'].map(encodeURIComponent).join('/'),
            }
          : nothing,
        done: j.steps
          ? {
              ...(quantity(j.done, '') as Extract<Cell, { is: 'quantity' }>),
              text: `${number(j.done)} of ${number(j.steps)}`,
            }
          : nothing,
        begins: dayCell(j.begins),
        ends: endCell(j),
        kept: kept(j),
      },
    })),
    empty,
  };
}
function mapsTable(shop: Shop, maps: readonly MapListed[], empty = 'None yet: enter the first map.'): TableBlock {
  return {
    block: 'table',
    title: 'Structure maps',
    columns: [
      left('map', 'Map'),
      left('models', 'Made for'),
      right('parts', 'Parts'),
      right('joins', 'Rows'),
      left('kept', 'Kept'),
    ],
    rows: maps.map((m) => ({
      id: m.name,
      cells: {
        map: { is: 'link', text: m.title, href: href(shop, 'maps', m.name) },
        models: words(m.models.join(', ') || 'any model'),
        parts: quantity(m.parts, ''),
        joins: quantity(m.joins, ''),
        kept: kept(m),
      },
    })),
    empty,
  };
}
function floorsTable(shop: Shop, floors: readonly FloorListed[]): TableBlock {
  return {
    block: 'table',
    title: 'Floors',
    columns: [left('floor', 'Floor'), right('crew', 'Persons'), right('jigs', 'Jigs'), left('kept', 'Kept')],
    rows: floors.map((x) => ({
      id: x.name,
      cells: {
        floor: { is: 'link', text: x.title, href: href(shop, 'floors', x.name) },
        crew: quantity(x.crew, ''),
        jigs: quantity(x.jigs, ''),
        kept: kept(x),
      },
    })),
    empty: 'None yet: enter who works, and when.',
  };
}
function findings(q: Pick<TeardownListInput, 'jobs' | 'maps' | 'floors'>): FindingsBlock {
  return {
    block: 'findings',
    title: 'Findings',
    findings: [...q.jobs, ...q.maps, ...q.floors].flatMap((r) =>
      r.finding
        ? [
            {
              code: 'teardown.kept-unread',
              text: `${r.title}: ${r.finding}`,
              entries: [String(r.entry)],
              remedy: 'Open it, correct it and keep it again.',
            },
          ]
        : [],
    ),
    empty: 'All that is kept reads.',
  };
}

export interface AircraftTeardownInput {
  readonly shop: Shop;
  readonly thing: record.Thing;
  readonly life: record.Life | undefined;
  readonly parts: readonly record.Thing[];
  readonly day: Day;
  readonly jobs: readonly JobListed[];
  /** Maps that fit its model. */
  readonly maps: readonly MapListed[];
}
/** What of this aircraft is to be taken apart, and the maps that a new job of it can rest on. */
export function aircraftTeardownSheet(q: AircraftTeardownInput): Sheet {
  const registration = q.thing.attributes.registration?.value ?? q.thing.id;
  const model = q.thing.attributes.model?.value;
  const open = q.jobs.filter((j) => j.done < j.steps || j.finding);
  return {
    ...emptySheet('teardown', 'What has to come off?', q.day, q.shop.invented === true),
    subject: registration,
    titleBlock: aircraftBlock(q.thing, q.life, q.parts, q.day),
    answer: q.jobs.length
      ? [
          t(`Of ${registration} `),
          f(count(open.length, 'job')),
          t(open.length === 1 ? ' is open' : ' are open'),
          ...(open[0]?.targets ? [t(`: to ${open[0].targets}`)] : []),
          ...(open[0]?.ends ? [t(', finished'), ...endSpans(open[0])] : []),
          t('.'),
        ]
      : [t(`Of ${registration} `), f('nothing is to be taken apart'), t('.')],
    because: q.maps.length
      ? `${count(q.maps.length, 'structure map')} ${q.maps.length === 1 ? 'fits' : 'fit'} ${model ? `the model ${model}` : 'it'}.`
      : `No structure map was made for ${model ? `the model ${model}` : 'an aircraft without a model on record'}: enter one, and jobs can rest on it.`,
    blocks: [
      jobsTable(q.shop, q.jobs, 'None: a job names this aircraft when it is entered.'),
      mapsTable(q.shop, q.maps, 'None that fits its model.'),
      ...(q.jobs.some((j) => j.finding) ? [findings({ jobs: q.jobs, maps: [], floors: [] })] : []),
    ],
    caution: caution(q.shop.invented === true),
  };
}
