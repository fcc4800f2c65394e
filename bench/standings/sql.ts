import pg from 'pg';
import { copyText } from '../../store/totals/copy.ts';
import { Answers, aircraftNumber, NONE, thingNumber } from './answers.ts';
import { SHOP } from './fleet.ts';

/**
 * The same question as one set-based query over the log: totals by use, gaps, recent flying and work done as grouped
 * sums of the entries in force, then the standings as case expressions. The rules of the bench are written into it by
 * hand; parts and groups come from the tables `part` and `aircraft`. Parallel workers and joins as PostgreSQL chooses;
 * `offset 0` keeps it from reading the JSON of a row once for every figure.
 */
const FUNCTIONS = `
create or replace function pg_temp.near(l float8, at boolean, s float8) returns int language sql immutable as $$
  select case when round(l * 1e6) < 0 then 6 when round(l * 1e6) = 0 and at then 5
    when round(round(l * 1e6) / 1e6 * s * 1e6) / 1e6 <= 1 then 4 else 3 end $$;
create or replace function pg_temp.due_s(total float8, h float8) returns float8 language sql immutable as $$
  select case when h is not null then greatest(0, floor(total + floor(h * 3600 + 0.5))) end $$;
create or replace function pg_temp.due_n(landings float8, more float8) returns float8 language sql immutable as $$
  select case when more is not null then greatest(0, floor(landings + more + 1e-6)) end $$;
`;

const inForce = (l: string) =>
  `${l}.shop = '${SHOP}' and not exists (select from log c where c.shop = ${l}.shop and c.replaces = ${l}.number)`;
const FLEET = `
flights as (
  select l.subject, l.day, (b->>'hours_h')::float8 h, (b->>'landings')::int n, b->>'use' as use
  from log l cross join lateral (select l.body::jsonb b offset 0) x where l.kind = 'flights' and ${inForce('l')}
),
sums as (
  select subject, sum(h) h, sum(n) n,
    coalesce(sum(n) filter (where use = 'tow'), 0) n_tow,
    coalesce(sum(h) filter (where use = 'tow'), 0) h_tow,
    coalesce(sum(h) filter (where use = 'instruction'), 0) h_ins,
    sum(h) filter (where day > '2024-11-24') r_h, sum(n) filter (where day > '2024-11-24') r_n,
    coalesce(sum(n) filter (where use = 'tow' and day > '2024-11-24'), 0) r_n_tow,
    coalesce(sum(h) filter (where use = 'tow' and day > '2024-11-24'), 0) r_h_tow,
    coalesce(sum(h) filter (where use = 'instruction' and day > '2024-11-24'), 0) r_h_ins,
    coalesce(sum(h) filter (where day > '2025-06-01'), 0) e_h,
    coalesce(sum(h) filter (where use = 'tow' and day > '2025-06-01'), 0) e_h_tow,
    coalesce(sum(h) filter (where use = 'instruction' and day > '2025-06-01'), 0) e_h_ins
  from flights group by subject
),
gaps as (
  select l.subject, b->>'from' f, b->>'to' t from log l cross join lateral (select l.body::jsonb b offset 0) x
  where l.kind = 'gap' and ${inForce('l')}
),
readings as (
  select l.subject, l.day, (b->>'total_h')::float8 h, (b->>'landings')::int n
  from log l cross join lateral (select l.body::jsonb b offset 0) x where l.kind = 'reading' and ${inForce('l')}
),
lost as (
  select g.subject, z.h - a.h h, z.n - a.n n from gaps g
  join readings a on a.subject = g.subject and a.day = to_char(g.f::date - 1, 'YYYY-MM-DD')
  join readings z on z.subject = g.subject and z.day = g.t
),
fleet as (
  select s.*, l.subject is not null gap, s.h + coalesce(l.h, 0) total, s.n + coalesce(l.n, 0) landings,
    round((s.h + coalesce(l.h, 0)) * 3600) total_s, coalesce(l.h, 0) lost_h, coalesce(l.n, 0) lost_n,
    r_n / r_h lpa, (r_n + 2.0 * r_n_tow) / r_h cap_rate, 1 + (1.5 * r_h_tow + 0.5 * r_h_ins) / r_h weighted_rate,
    (r_h_tow + r_h_ins) / r_h hard_rate
  from sums s left join lost l using (subject)
),
yard as (
  select f.*, 150 / greatest(lpa, 0.01) * cap_rate cap_soon, 50 * weighted_rate weighted_soon,
    50 * case when hard_rate > 0 then hard_rate else 1 end hard_soon from fleet f
)`;
const DONE = `
done as (
  select l.subject, max((b->>'total_h')::float8) filter (where b->>'directive' = 'B-01') done1_h,
    max((b->>'total_h')::float8) filter (where b->>'directive' = 'B-04') done4_h,
    max(l.day) filter (where b->>'directive' = 'B-04') done4_day
  from log l cross join lateral (select l.body::jsonb b offset 0) x where l.kind = 'accomplished' and ${inForce('l')} group by l.subject
)`;
const today = `date '2026-11-25'`;
const dayOf = (e: string) => `(${e} - date '1970-01-01')`;
/** One answer: rule, then standing and due at of both ends. */
const row = (rule: number, cells: string) => `(${rule}, ${cells})`;
const none = 'null::float8';

/** A counted limit in hours or landings: figures left at both ends, rate, yardsticks. */
function counted(low: string, high: string, rate: string, soon: string, steep: string, at: boolean, landings: boolean) {
  const end = (left: string, s: string) => {
    const h = `case when ${rate} > 0 then (${left}) / ${rate} end`;
    return `pg_temp.near(${left}, ${at}, 1 / ${s}), ${landings ? none : `pg_temp.due_s(total_s, ${h})`}, ${landings ? `pg_temp.due_n(landings, ${h} * lpa)` : none}, ${none}`;
  };
  return `${end(low, `case when gap then greatest(${soon}, ${steep}) else ${soon} end`)}, ${end(high, soon)}`;
}
const twice = (cells: string) => `${cells}, ${cells}`;
const only = (condition: string, cells: string) => {
  const list = splitTop(cells);
  return list.map((c, i) => `case when ${condition} then ${c} else ${i % 4 === 0 ? 1 : 'null'} end`).join(', ');
};
function splitTop(cells: string): string[] {
  const out = [''];
  let deep = 0;
  for (const c of cells) {
    if (c === '(') deep++;
    if (c === ')') deep--;
    if (c === ',' && deep === 0) out.push('');
    else out[out.length - 1] += c;
  }
  return out;
}
const cap = (limit: number) =>
  counted(
    `${limit} - (landings + 2.0 * (n_tow + lost_n))`,
    `${limit} - (landings + 2.0 * n_tow)`,
    'cap_rate',
    'cap_soon',
    '450',
    true,
    true,
  );
const WEIGHTED_LOW = '(total + 1.5 * (h_tow + lost_h) + 0.5 * h_ins)';
const WEIGHTED_HIGH = '(total + 1.5 * h_tow + 0.5 * h_ins)';
const since = '(e_h + 1.5 * e_h_tow + 0.5 * e_h_ins)';
const done = (n: string, isDone: string) => `case when ${isDone} and ${n} = 3 then 2 else ${n} end`;
const hours = (left: string) => `pg_temp.due_s(total_s, ${left})`;
const left1 = 'case when done1_h is not null then 500 - (total - done1_h) else 2500 - total end';
const near1 = `pg_temp.near(${left1}, true, 0.02)`;
const left4 = 'case when done4_h is not null then 300 - (total - done4_h) else 100 - e_h end';
const day4 = `case when done4_day is not null then done4_day::date + 730 else date '2025-06-01' + 500 end`;
const near4 = `greatest(pg_temp.near(${left4}, true, 0.02), pg_temp.near((${day4}) - ${today}, true, 1.0 / 180))`;
const [a8, b8] = ['(1500 - total)', '(50 - e_h)'];
const near8 = (x: string) => `pg_temp.near(${x}, true, 0.02)`;
const first8 = `(${near8(a8)} < ${near8(b8)} or (${near8(a8)} = ${near8(b8)} and ${a8} >= ${b8}))`;
const days = (d: string, n: string) => `${n}, ${none}, ${none}, ${dayOf(d)}`;

const ON_PARTS = [
  row(0, twice(`${done(near1, 'done1_h is not null')}, ${hours(left1)}, ${none}, ${none}`)),
  row(1, cap(6000)),
  row(
    2,
    counted(`3500 - ${WEIGHTED_LOW}`, `3500 - ${WEIGHTED_HIGH}`, 'weighted_rate', 'weighted_soon', '125', false, false),
  ),
  row(3, twice(`${done(near4, 'done4_h is not null')}, ${hours(left4)}, ${none}, ${dayOf(`(${day4})`)}`)),
  row(
    4,
    twice(`pg_temp.near(5000 - landings, true, 1.0 / 150), ${none}, pg_temp.due_n(landings, 5000 - landings), ${none}`),
  ),
  row(
    5,
    only(
      `model = 'B-2'`,
      twice(days(`date '2027-06-30'`, `pg_temp.near(date '2027-06-30' - ${today}, true, 1.0 / 180)`)),
    ),
  ),
  row(
    6,
    only(
      `part_number = 'S-100'`,
      counted('1500 - (h_tow + h_ins + lost_h)', '1500 - (h_tow + h_ins)', 'hard_rate', 'hard_soon', '50', true, false),
    ),
  ),
  row(
    7,
    twice(
      `case when ${first8} then ${near8(a8)} else ${near8(b8)} end, ${hours(`case when ${first8} then ${a8} else ${b8} end`)}, ${none}, ${none}`,
    ),
  ),
];
const ON_AIRCRAFT = [
  row(8, twice(days('(built::date + 6000)', `pg_temp.near((built::date + 6000) - ${today}, true, 1.0 / 180)`))),
  row(9, counted(`400 - ${since}`, `400 - ${since}`, 'weighted_rate', 'weighted_soon', '125', true, false)),
];
const NEW = [row(10, only(`model = 'B-1'`, cap(5000)))];
const CELLS = 'r (rule, w, ws, wn, wd, b, bs, bn, bd)';
const OUT = 'rule, w, ws, wn, wd, b, bs, bn, bd';
const onParts = (rows: readonly string[], join: string) => `
  select p.subject, ${OUT} from part p join aircraft a on a.shop = p.shop and a.subject = p.sits_in
  join yard y on y.subject = p.sits_in ${join} cross join lateral (values ${rows.join(',\n')}) ${CELLS}
  where p.shop = '${SHOP}' and p.part = 'inboard_spar'`;
const QUERIES = {
  tried: `with ${FLEET} ${onParts(NEW, '')}`,
  all: `with ${FLEET}, ${DONE} ${onParts(ON_PARTS, 'left join done d on d.subject = p.subject')}
    union all select a.subject, ${OUT} from aircraft a join yard y using (subject)
    cross join lateral (values ${ON_AIRCRAFT.join(',\n')}) ${CELLS} where a.shop = '${SHOP}'`,
};

/** Runs the query and takes its answers; the time that the answers take to arrive is in it. */
export async function bySql(
  url: string,
  which: keyof typeof QUERIES,
  aircraft: number,
): Promise<{ answers: Answers; ms: number }> {
  const client = new pg.Client(url);
  await client.connect();
  await client.query(FUNCTIONS);
  await client.query(`set work_mem = '256MB'`);
  const from = performance.now();
  const answers = new Answers(aircraft);
  for await (const rows of copyText(client, QUERIES[which]))
    for (const [id, rule, ...cells] of rows)
      answers.put(
        aircraftNumber(id!),
        thingNumber(id!),
        Number(rule),
        cells.map((c) => (Number.isNaN(Number(c)) ? NONE : Number(c))),
      );
  const ms = performance.now() - from;
  await client.end();
  return { answers, ms };
}
