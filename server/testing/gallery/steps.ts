import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { readInput } from '../../../cli/read.ts';
import { letterPdf } from '../../../documents/index.ts';
import { extremes } from '../../../engine/directive/expression/extremes.ts';
import { firstReach } from '../../../engine/directive/expression/first-reach.ts';
import { linearExtremes, variableForm } from '../../../engine/foundation/region/index.ts';
import { landings } from '../../../engine/foundation/units.ts';
import {
  type Day,
  directive,
  growth,
  outlook,
  parseHours,
  record,
  secondsFromHours,
  teardown,
  usage,
} from '../../../engine/index.ts';
import { recordExample } from '../../../examples/index.ts';
import { readGrid } from '../../../intake/index.ts';
import { zip } from '../../../intake/testing/files.ts';
import { shipped } from '../../../store/cluster/binaries.ts';
import { initialise, prepareFolder } from '../../../store/cluster/init.ts';
import { runAs } from '../../../store/cluster/run-as.ts';
import { openStore, type Store } from '../../../store/index.ts';
import type { TestStore } from '../../../store/testing/database.ts';
import { gather } from '../../desk.ts';
import { mediaTypeOf } from '../../page-file.ts';
import { letterOf } from '../../routes/letter.ts';
import { createServer } from '../../server.ts';
import { formula } from './formula.ts';
import type { Said } from './said.ts';
import { TEARDOWN_STEPS } from './teardown-steps.ts';

export interface Stage {
  readonly app: FastifyInstance;
  readonly test: TestStore;
}
type Step = (stage: Stage) => unknown;

const madeUp = { source: 'Made up for this refusal', known: 'invented' } as const;
const hours = (low: number, high: number) => ({
  variables: [{ name: 'hours without papers', low, high, integer: false }],
  constraints: [],
});
const bounded = (low: number, high: number, name: string) => ({
  name,
  terms: [[0, 1]] as [number, number][],
  low,
  high,
});
const read: outlook.TotalReading[] = [{ day: '2026-01-01' as Day, total_s: 3600 }];
const forecast = (options: outlook.OutlookOptions) =>
  outlook.outlook(read, '2026-01-15' as Day, { left_s: 3600 }, { left_s: 3600 }, options);

const noStress = () => {
  const from = { source: 'Made up for this refusal', known: 'invented' } as const;
  const up = [0.5, 1].map((at) => ({ at, times: 10 - 9 * at }));
  return usage.readUsage({
    sparwright: 'usage/1',
    title: 'No stress known',
    aeroplane: { name: 'none', limit_up: 3.8, limit_down: -1.5, from },
    uses: [
      {
        use: 'private',
        flight_h: 1,
        loads: [{ as: 'table', load: 'gust', measure: 'increment', per: 'hour', up, from }],
      },
    ],
    reference_use: 'private',
    place: { name: 'a hole', stress: { as: 'unknown', ground_share: -0.3, from } },
    life: { curve: { library: '2024-t3-kt2' }, scatter_factor: { value: 8, from } },
  } satisfies usage.UsageInput);
};

async function inFolder<T>(work: (folder: string) => T): Promise<Awaited<T>> {
  const folder = mkdtempSync(join(tmpdir(), 'sparwright-gallery-'));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
const document_ = (bytes: number) =>
  inFolder((folder) => {
    const file = join(folder, 'record.yaml');
    writeFileSync(file, '');
    truncateSync(file, bytes);
    return readInput(file);
  });
const event = (more: object) => ({
  subject: 'aircraft:0612',
  kind: 'event',
  day: '2026-01-10' as Day,
  order: 0,
  schema: 'record/1',
  evidence: 'seen',
  body: { event: 'hard_landing' },
  ...more,
});
const write = (store: Store, more: object = {}, options = {}) =>
  store.log.append('demo', [event(more)], 'A. Reader', '2026-01-15T10:00:00.000Z', options);

async function refused(app: FastifyInstance, size: number): Promise<Said> {
  const headers = { host: '127.0.0.1:4747', 'content-type': 'application/json' };
  const payload = `"${'a'.repeat(size)}"`;
  return (await app.inject({ method: 'POST', url: '/api/record', headers, payload })).json<Said>();
}

/** Steps by the name that a file of the gallery gives them. What they throw is what the program says. */
export const STEPS: Readonly<Record<string, (stage: Stage) => Promise<Said | undefined>>> = Object.fromEntries(
  Object.entries({
    ...TEARDOWN_STEPS,
    'hours of infinity': () => secondsFromHours(Number.POSITIVE_INFINITY),
    'landings of 1.5': () => landings(1.5),
    'hours written as words': () => parseHours('twelve and a half'),
    'a fact named hours.moon': () => {
      const model = record.modelOf(record.readRecord(recordExample));
      return record.lifeOf(model, 'aircraft:0612', { until: model.day }).figure('hours.moon', model.day);
    },
    'hours without a ceiling': () => linearExtremes(variableForm(0), hours(0, Number.POSITIVE_INFINITY)),
    'from two hours to one': () => linearExtremes(variableForm(0), hours(2, 1)),
    'a term of nothing': () =>
      linearExtremes(variableForm(0), {
        ...hours(0, 1),
        constraints: [{ name: 'a paper', terms: [[4, 1]], low: 0, high: 1 }],
      }),
    'stress without a source': () => usage.spectrumOf(noStress(), 'private'),
    'mean stress as high as the strength': () => usage.goodman(60, 400, 400),
    'papers that exclude each other': () =>
      linearExtremes(variableForm(0), {
        ...hours(0, 100),
        constraints: [
          bounded(10, 20, 'journey log p. 4'),
          bounded(5, 90, 'invoice of May'),
          bounded(25, 30, 'meter on 3 June'),
        ],
      }),
    'a sliver of a millionth': () =>
      extremes(formula('hours.tow < 5 ? 1 : 0'), () => ({ constant: 0, terms: [[0, 1]] }), hours(5 - 8e-7, 5 - 6e-7)),
    'a forecast to no limit': () =>
      firstReach(formula('hours.total'), { 'hours.total': 1 }, { 'hours.total': 1 }, Number.NaN, 'at', 10),
    'a prior of spread nine': () => forecast({ prior: { spread: 9 } }),
    'a rate of minus one': () => forecast({ rates_h_per_year: [-1] }),
    'a toughness of minus one': () =>
      growth
        .materialOf({
          name: 'a plate',
          law: { law: 'paris', units: 'mm, MPa√m', c: 1e-8, n: 3, from: madeUp },
          yield_MPa: { value: 290, from: madeUp },
          toughness: [{ thickness_mm: 6, k_MPa_sqrt_m: -1, from: madeUp }],
        })
        .toughnessAt(6),
    'a cycle without a range': () => growth.stressRatio(100, 100),
    'a hole larger than its plate': () =>
      growth.crackForm({ shape: 'lug_through', width_mm: 20, thickness_mm: 3, diameter_mm: 22 }),
    'a long shallow crack in a bore': () =>
      growth
        .crackForm({
          shape: 'hole_corner',
          width_mm: 60,
          thickness_mm: 4,
          diameter_mm: 6,
          cracks: 1,
          bending_ratio: 0,
        })
        .k({ c_mm: 6, a_mm: 1 }),
    'a table of factors that runs back': () =>
      growth.crackForm({
        shape: 'own_table',
        width_mm: 60,
        thickness_mm: 4,
        points: [
          { c_mm: 3, beta: 1.6 },
          { c_mm: 2, beta: 1.8 },
        ],
        from: { source: 'own finite elements', known: 'invented' },
      }),
    'a look that finds all sizes alike': () => growth.missOf({ a50_mm: 2, a90_mm: 2 }),
    'chance without scatter': () =>
      growth.prepareChance({
        document: { chance: undefined } as growth.GrowthDocument,
        programme: null,
        critical_c_mm: null,
      }),
    'a material of no name': () => growth.materialOf({ library: 'unobtainium', law: 'walker' }),
    'a spar cap of two inches': () => growth.materialOf({ library: '2024-t3', law: 'walker' }).toughnessAt(50.8),
    'a law from three readings': () =>
      growth.fitParis([9, 10, 11].map((length_mm, i) => ({ length_mm, cycles: i * 1000, range_MPa_sqrt_m: 10 }))),
    'an issue adopted again': async ({ app, test }: Stage) => {
      const [first] = await test.store.directives.list('demo');
      const host = '127.0.0.1:4747';
      const payload = { text: JSON.stringify(first!.document), by: 'A. Reader', on: '2026-01-15' };
      const headers = { host, origin: `http://${host}` };
      return (await app.inject({ method: 'POST', url: '/api/shops/demo/directives', headers, payload })).json<Said>();
    },
    'an issue withdrawn again': async ({ app }: Stage) => {
      const host = '127.0.0.1:4747';
      const url = '/api/shops/demo/directives/S-3/withdraw';
      const payload = { issue: 1, because: 'Taken back', by: 'A. Reader', on: '2026-01-15' };
      const asked = { method: 'POST' as const, url, payload, headers: { host, origin: `http://${host}` } };
      await app.inject(asked);
      return (await app.inject(asked)).json<Said>();
    },
    'a package that says two gigabytes': () =>
      readGrid(
        zip([
          { name: 'xl/workbook.xml', data: Buffer.from('<workbook/>') },
          { name: 'b', data: Buffer.from('x'), says: 2e9 },
        ]),
        'log.xlsx',
      ),
    'two writers on one page': ({ test }: Stage) => write(test.store, {}, { expectLast: 0 }),
    'a correction of entry 9999': ({ test }: Stage) => write(test.store, { replaces: 999_999 }),
    'a second correction': async ({ test }: Stage) => {
      const [number] = await write(test.store);
      await write(test.store, { replaces: number });
      return write(test.store, { replaces: number });
    },
    'a copy over its own shop': async ({ test }: Stage) => {
      const lines: string[] = [];
      for await (const line of test.store.exportLines('demo')) lines.push(line);
      return test.store.importLines(lines);
    },
    'half a copy': ({ test }: Stage) =>
      test.store.importLines(['{"sparwright":"log/1","shop":{"id":"half","name":"Half","invented":true}}']),
    'a database of a newer version': async ({ test }: Stage) => {
      await test.pool.query("insert into migration (name, hash) values ('9999-later.sql', 'x')");
      try {
        await openStore({ databaseUrl: test.url });
      } finally {
        await test.pool.query("delete from migration where name = '9999-later.sql'");
      }
    },
    'a copy over an older file': ({ test }: Stage) =>
      inFolder(async (folder) => {
        const file = join(folder, 'older.backup');
        writeFileSync(file, 'older');
        await test.store.backup(file, { program: '0', at: '2026-01-15T10:00:00.000Z' });
      }),
    'a log changed behind the program': async ({ test }: Stage) => {
      await test.store.shops.open({ id: 'changed', name: 'Changed', invented: true });
      await test.store.log.append('changed', [event({})], 'A. Reader', '2026-01-15T10:00:00.000Z');
      await test.pool.query('alter table log disable trigger log_stays');
      await test.pool.query("update log set note = 'changed' where shop = 'changed'");
      await test.pool.query('alter table log enable trigger log_stays');
      await inFolder((folder) =>
        test.store.backup(join(folder, 'x'), { program: '0', at: '2026-01-15T10:00:00.000Z', shops: ['changed'] }),
      );
    },
    'a full disk': ({ test }: Stage) => {
      throw test.store.faultInWords({ code: 'ENOSPC' });
    },
    'a text document for a scan': () => mediaTypeOf(Buffer.from('PK a text document'), 'logbook.docx'),
    'packages without PostgreSQL': () => inFolder((folder) => shipped(folder)),
    'a machine without users': () =>
      inFolder((folder) => {
        const users = join(folder, 'passwd');
        writeFileSync(users, 'root:x:0:0::/root:/bin/sh\n');
        return runAs(true, users);
      }),
    'a data folder that is a file': () =>
      inFolder((folder) => {
        const file = join(folder, 'data');
        writeFileSync(file, '');
        return prepareFolder(file, null);
      }),
    'a database program that is not there': () =>
      inFolder((folder) => initialise(folder, join(folder, 'no-programs'), null)),
    'a database at a closed port': () => openStore({ databaseUrl: 'postgres://nobody@127.0.0.1:1/none' }),
    'a body of 21 MB': ({ app }: Stage) => refused(app, 21 * 1024 * 1024),
    'a store that breaks': async ({ test }: Stage) => {
      const broken = new Proxy(test.store, {
        get: (store, name) => {
          if (name !== 'shops') return Reflect.get(store, name);
          return { ...store.shops, list: () => Promise.reject(new Error('broken on purpose')) };
        },
      });
      const app = await createServer({ store: broken, root: '/nowhere' });
      const quiet = process.stderr.write;
      process.stderr.write = () => true;
      try {
        return (await app.inject({ url: '/api/shops', headers: { host: '127.0.0.1:4747' } })).json<Said>();
      } finally {
        process.stderr.write = quiet;
        await app.close();
      }
    },
    'a document of 21 MB': () => document_(21 * 1024 * 1024),
    'an empty document': () => document_(0),
    'a target that waits for itself': () => teardown.leastSet({ cost: [5, 5], clauses: [[[1]], [[0]]], targets: [0] }),
    'a clause with a number too high': () => teardown.leastSet({ cost: [5], clauses: [[[7]]], targets: [0] }),
    'a project whose jobs go round in a ring': () => teardown.readRcp('3 1  2  1 1 1 2  1 1 1 3  1 1 1 1'),
    'a reason of sixty lines': async ({ test }: Stage) => {
      const g = await gather({ store: test.store, today: () => '2026-01-15' }, 'demo', 'aircraft:0612');
      const letter = letterOf(
        g,
        directive.readDirective((await test.store.directives.list('demo'))[0]!.document).number,
        'L',
      );
      return letterPdf({ ...letter, because: 'A reason that goes on and on. '.repeat(900) });
    },
  } satisfies Record<string, Step>).map(([name, step]) => [
    name,
    async (stage: Stage) => {
      const said: unknown = await (step as Step)(stage);
      return (said as Partial<Said> | undefined)?.given === undefined ? undefined : (said as Said);
    },
  ]),
);
