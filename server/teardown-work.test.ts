import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { createServer } from './server.ts';
import { smallFloor, smallJob, smallWing } from './testing/small-wing.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
const today = () => '2026-11-25';
const at = '/api/shops/own/teardown';
const send = (method: 'GET' | 'POST', url: string, payload?: object) =>
  app.inject({ method, url, ...(payload ? { payload } : {}), headers: { host, origin: `http://${host}` } });
const post = (url: string, payload: object) => send('POST', `${at}/${url}`, payload);
const by = 'M. Orne';
const last = () => test.store.log.last('own');

let job = '';
let number = 0;
const done = (operation: string, more: object = {}) => ({
  ...{ what: 'done', operation, on: '2026-11-24', by: 'B. Aske' },
  ...more,
});
const found = (more: object = {}) => ({
  ...{ what: 'found', look: 'look-bay', finding: 'nothing', on: '2026-11-24', by },
  ...more,
});
const holes = () => ({ what: 'holes', join: 'row-tank', elongated: 1, oversize: 0, on: '2026-11-24', by });
const record = (records: object | readonly object[], more: object = {}) =>
  post(`jobs/${job}/work`, { records: [records].flat(), by, ...more });
const steps = async () => (await send('GET', `${at}/jobs/${job}/steps`)).json();
const doneOps = async (): Promise<string[]> =>
  (await steps()).steps.flatMap((s: { done: boolean; operation: string | null }) =>
    s.done && s.operation ? [s.operation] : [],
  );

beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today });
  await test.store.shops.open({ id: 'own', name: 'This shop', invented: false });
  await post('maps', { document: smallWing, by });
  await post('floors', { document: smallFloor, by });
});
afterAll(async () => {
  await app.close();
  await test.done();
});
beforeEach(async () => {
  const r = await post('jobs', { document: { ...smallJob, title: `Job ${++number}` }, by, after: 0 });
  expect(r.statusCode, r.body).toBe(200);
  job = r.json().name;
});

describe('recording work', () => {
  it('a kept job that is being changed is answered with its work, and says so; under another title it is another job', async () => {
    await record([done('open:row-panel'), done('off:panel')]);
    const ask = async (more: object, name?: string) =>
      (await post('jobs/answer', { document: { ...smallJob, ...more }, ...(name ? { name } : {}) })).json();
    const title = `Job ${number}`;
    const mine = await ask({ title, day: '2026-11-24' }, job);
    expect(mine.because).toMatch(/2 steps of \d+ done; next|Two steps of \d+ done; next|2 of \d+/i);
    expect(mine.warnings[0]).toBe('Planned with the 2 records of work that stand on this job');
    const other = await ask({ title: 'Elsewhere' }, job);
    expect(other.warnings[0]).toMatch(/Under this title it is kept as another job/);
    for (const sheet of [other, await ask({ title }), await ask({ title }, 'nothing-is-kept-here')])
      expect(sheet.because).not.toMatch(/ done; next/);
  });
  it('steps that did not change are not sent again; work, another issue of the job and other units change them', async () => {
    const asked = (tag: string, query = '') =>
      app.inject({
        method: 'GET',
        url: `${at}/jobs/${job}/steps${query}`,
        headers: { host, ...(tag ? { 'if-none-match': tag } : {}) },
      });
    const first = await asked('');
    const tag = String(first.headers.etag);
    const same = await asked(tag);
    expect([same.statusCode, same.body]).toEqual([304, '']);
    expect((await asked(tag, '?units=inch')).statusCode).toBe(200);
    await record(done('open:row-panel'));
    const worked = await asked(tag);
    expect(worked.statusCode).toBe(200);
    expect(worked.json().last).toBeGreaterThan(first.json().last);
    const now = String(worked.headers.etag);
    const later = { ...smallJob, title: `Job ${number}`, day: '2026-11-24' };
    expect((await post('jobs', { document: later, by })).statusCode).toBe(200);
    expect((await asked(now)).statusCode).toBe(200);
  });
  it('is done on the plan from then on, each record in an entry of its own', async () => {
    const before = await steps();
    const r = await record([done('open:row-panel', { minutes: 14 }), done('off:panel')], { after: before.last });
    expect(r.statusCode, r.body).toBe(200);
    const n = await last();
    expect(r.json()).toEqual({ entries: [n - 1, n], last: n });
    expect(await doneOps()).toEqual(['open:row-panel', 'off:panel']);
    const after = await steps();
    expect(after.last).toBe(n);
    expect(after.work).toMatchObject([
      { entry: n - 1, record: { operation: 'open:row-panel', minutes: 14, by: 'B. Aske' }, by, corrects: null },
      { entry: n },
    ]);
    const [entry] = await test.store.log.read('own', { after: n - 1 });
    expect(entry).toMatchObject({
      kind: 'teardown_work',
      subject: `teardown:${job}`,
      schema: 'teardown/1',
      recordedBy: by,
    });
    expect((await send('GET', `${at}/jobs/${job}?known=${n - 2}`)).body).not.toBe(
      (await send('GET', `${at}/jobs/${job}`)).body,
    );
  });
  it('sent again, the answer lost on the way, it is not recorded twice', async () => {
    const { last: seen } = await steps();
    const two = [done('open:row-panel'), done('off:panel')];
    const first = await record(two, { after: seen });
    const n = await last();
    const again = await record(two, { after: seen });
    expect([again.statusCode, again.json()], again.body).toEqual([200, first.json()]);
    const more = await record([...two, done('open:row-tank')], { after: seen });
    expect(more.json()).toEqual({ entries: [n - 1, n, n + 1], last: n + 1 });
    expect(await last()).toBe(n + 1);
  });
  it.each([
    [
      'a part that is off already',
      [done('open:row-panel'), done('off:panel'), done('off:panel', { by: 'Another' })],
      'teardown.already-off',
    ],
    ['out of order', [done('off:tank')], 'teardown.out-of-order'],
    ['an operation that is not there', [done('off:fin')], 'teardown.operation-unknown'],
    ['a word that is no operation', [done('paint')], 'teardown.operation-unknown'],
    ['a look of another map', [found({ look: 'look-fin' })], 'teardown.id-unknown'],
    ['tomorrow', [done('open:row-panel', { on: '2026-11-26' })], 'record.entry-in-future'],
    ['no day', [done('open:row-panel', { on: undefined })], 'foundation.document-invalid'],
    ['minutes below zero', [done('open:row-panel', { minutes: -1 })], 'foundation.document-invalid'],
    ['a field of its own', [done('open:row-panel', { mood: 'good' })], 'foundation.document-invalid'],
    ['nothing', [], 'foundation.document-invalid'],
  ])('%s is refused in three lines, and nothing of it is stored', async (_, records, code) => {
    const before = await last();
    const r = await record(records);
    expect([r.statusCode, r.json().code], r.body).toEqual([422, code]);
    for (const line of ['given', 'allowed', 'remedy']) expect(r.json()[line].length).toBeGreaterThan(3);
    expect(await last()).toBe(before);
    expect(await doneOps()).toEqual([]);
  });
  it.each([
    [done('gate:signed', { on: '2026-11-26' }), '"Signed" as done on 2026-11-26'],
    [done('off:panel', { on: '2026-11-27' }), '"Take off: the panel" as done on 2026-11-27'],
    [found({ on: '2026-11-26' }), 'nothing found at "Bay behind the tank" on 2026-11-26'],
    [{ ...holes(), on: '2026-11-26' }, 'the holes of "Row of the tank" on 2026-11-26'],
    [done('off:fin', { on: '2026-11-26' }), '"off:fin" as done on 2026-11-26'],
  ])('ahead of today it is refused by its title, what is not there by its id (%#)', async (one, given) => {
    const r = await record(one);
    expect([r.statusCode, r.json().code, r.json().given]).toEqual([422, 'record.entry-in-future', given]);
    const entry = (await record(done('open:row-panel'))).json().last;
    const c = await post(`jobs/${job}/work/${entry}/correct`, { record: one, because: 'a slip', by });
    expect([c.statusCode, c.json().given]).toEqual([422, given]);
  });
  it('without a name, or of a job that is not there, it is refused', async () => {
    expect((await record(done('open:row-panel'), { by: ' ' })).statusCode).toBe(422);
    expect((await post('jobs/nowhere/work', { records: [done('open:row-panel')], by })).statusCode).toBe(404);
  });
  it('a finding changes what must be reached, and what is done stays done', async () => {
    await record([done('open:row-panel'), done('off:panel'), done('open:row-tank'), done('off:tank')]);
    const before = (await steps()).steps.length;
    const r = await record(found({ finding: 'finding', targets: [{ part: 'panel', work: 'repair' }] }));
    expect(r.statusCode, r.body).toBe(200);
    const after = await steps();
    expect(after.steps.length).toBeGreaterThan(before);
    expect(after.steps.map((s: { operation: string }) => s.operation)).toContain('repair:panel');
    expect((await doneOps()).slice(0, 4)).toEqual(['open:row-panel', 'off:panel', 'open:row-tank', 'off:tank']);
  });
});

describe('two people at once', () => {
  it('of different steps both stand, the second on top of the first', async () => {
    const { last: seen } = await steps();
    expect((await record(done('open:row-panel'), { after: seen, by: 'A' })).statusCode).toBe(200);
    const r = await record(holes(), { after: seen, by: 'B' });
    expect(r.statusCode, r.body).toBe(200);
    expect((await steps()).work.map((w: { by: string }) => w.by)).toEqual(['A', 'B']);
  });
  it('of the same step the second is told who recorded it, and nothing of hers is stored', async () => {
    const { last: seen } = await steps();
    await record(done('open:row-panel'), { after: seen, by: 'A. First' });
    const n = await last();
    const r = await record([holes(), done('open:row-panel', { by: 'C. Second' })], {
      after: seen,
      by: 'C. Second',
    });
    expect([r.statusCode, r.json().code]).toEqual([409, 'store.changed-meanwhile']);
    expect(r.json().given).toBe(
      `Meanwhile A. First recorded "Take out 12 screws: row of the panel" as done in entry ${n}`,
    );
    expect(await last()).toBe(n);
    await record([done('off:panel'), done('open:row-tank'), done('off:tank')]);
    const bare = await last();
    const looked = await record([found()], { after: bare, by: 'A. First' });
    expect(looked.statusCode, looked.body).toBe(200);
    const other = await record([found({ finding: 'finding', note: 'a crack' })], { after: bare, by: 'C. Second' });
    expect(other.json().given).toMatch(/A. First recorded nothing found at "Bay behind the tank"/);
  });
  it('at the very same moment one of them stands, whichever came first', async () => {
    const { last: seen } = await steps();
    const both = await Promise.all(
      ['A', 'B'].map((who) => record(done('open:row-panel', { by: who }), { after: seen, by: who })),
    );
    expect(both.map((r) => r.statusCode).sort()).toEqual([200, 409]);
    expect((await steps()).work).toHaveLength(1);
  });
  it('many at the very same moment, each with another thing: none is lost', async () => {
    const { last: seen } = await steps();
    const all = await Promise.all([
      record(done('open:row-panel'), { after: seen, by: 'A' }),
      record(holes(), { after: seen, by: 'B' }),
      record(found({ finding: 'finding' }), { after: seen, by: 'C' }),
    ]);
    expect(all.map((r) => r.body).join('')).not.toMatch(/given/);
    expect((await steps()).work).toHaveLength(3);
  });
  it('what does not fit what the other recorded is told with both reasons', async () => {
    await record([done('open:row-panel'), done('off:panel')]);
    const { last: seen, work } = await steps();
    await post(`jobs/${job}/work/${work[1].entry}/withdraw`, { because: 'still on', by: 'A. First' });
    const n = await last();
    const r = await record(done('open:row-tank'), { after: seen, by: 'B' });
    expect([r.statusCode, r.json().code]).toEqual([409, 'store.changed-meanwhile']);
    expect(r.json().given).toMatch(new RegExp(`A. First took a record back in entry ${n}.*open:row-tank.* before`));
    expect(await last()).toBe(n);
  });
  it('a job kept anew meanwhile is told as that', async () => {
    const { last: seen } = await steps();
    const look = { id: 'look-tip', at: 'panel' };
    const map = { ...smallWing, looks: [{ ...smallWing.looks[0]!, ...look }] };
    const kept = await post('jobs', { document: { ...smallJob, title: `Job ${number}`, map }, by: 'A. Lead' });
    expect(kept.statusCode, kept.body).toBe(200);
    const r = await record(found(), { after: seen });
    expect([r.statusCode, r.json().given], r.body).toEqual([
      409,
      expect.stringMatching(/the job was kept anew; now: /),
    ]);
  });
});

describe('a wrong record', () => {
  it('is corrected in its place, with who and why; what it was stays in the history', async () => {
    await record([done('open:row-panel'), done('off:panel')]);
    const [first] = (await steps()).work;
    const r = await post(`jobs/${job}/work/${first.entry}/correct`, {
      record: done('open:row-panel', { minutes: 25 }),
      because: 'the clock had stopped',
      by: 'C. Lead',
    });
    expect(r.statusCode, r.body).toBe(200);
    const { work } = await steps();
    expect(work[0]).toMatchObject({
      record: { minutes: 25 },
      corrects: first.entry,
      because: 'the clock had stopped',
      by: 'C. Lead',
    });
    expect(work[1].record.operation).toBe('off:panel');
    const again = await post(`jobs/${job}/work/${first.entry}/correct`, {
      record: done('open:row-panel'),
      because: 'x',
      by,
    });
    expect([again.statusCode, again.json().given]).toEqual([404, expect.stringMatching(/replaced by entry/)]);
    expect(await test.store.work.history('own', job)).toHaveLength(3);
  });
  it('is taken back, unless later work rests on it', async () => {
    await record([done('open:row-panel'), done('off:panel')]);
    const [first, second] = (await steps()).work;
    const before = await last();
    const rests = await post(`jobs/${job}/work/${first.entry}/withdraw`, { because: 'not yet', by });
    expect([rests.statusCode, rests.json().code], rests.body).toEqual([422, 'teardown.out-of-order']);
    expect(await last()).toBe(before);
    expect((await post(`jobs/${job}/work/${second.entry}/withdraw`, { because: 'still on', by })).statusCode).toBe(200);
    expect((await post(`jobs/${job}/work/${first.entry}/withdraw`, { because: 'not yet', by })).statusCode).toBe(200);
    expect(await doneOps()).toEqual([]);
    expect((await record(done('open:row-panel'))).statusCode).toBe(200);
  });
  it('of another job, or without a reason, is refused', async () => {
    const entry = (await record(done('open:row-panel'))).json().last;
    const other = await post('jobs', { document: { ...smallJob, title: `Job ${++number}` }, by });
    const wrong = await post(`jobs/${other.json().name}/work/${entry}/withdraw`, { because: 'x', by });
    expect(wrong.statusCode).toBe(404);
    expect((await post(`jobs/${job}/work/${entry}/withdraw`, { by })).statusCode).toBe(422);
    expect((await post(`jobs/${job}/work/one/withdraw`, { because: 'x', by })).statusCode).toBe(422);
  });
});

describe('what is recorded and what is kept hold together', () => {
  it('a job kept anew goes on with its work, unless the work does not fit it', async () => {
    await record([done('open:row-panel'), done('off:panel')]);
    const title = `Job ${number}`;
    const later = await post('jobs', { document: { ...smallJob, title, day: '2026-11-24' }, by });
    expect(later.statusCode, later.body).toBe(200);
    expect(await doneOps()).toEqual(['open:row-panel', 'off:panel']);
    const before = await last();
    const [body, , tank] = smallWing.parts;
    const without = {
      ...smallWing,
      parts: [body, { ...tank!, needs: [] }],
      joins: [{ ...smallWing.joins[1]!, needs: [] }],
    };
    const r = await post('jobs', { document: { ...smallJob, title, map: without }, by });
    expect([r.statusCode, r.json().code], r.body).toEqual([422, 'teardown.operation-unknown']);
    expect(r.json().given).toMatch(/^The work recorded on "job-\d+" does not fit what is to be kept: /);
    expect(await last()).toBe(before);
  });
  it('a job taken back and kept again begins anew', async () => {
    await record(done('open:row-panel'));
    await post(`jobs/${job}/withdraw`, { because: 'done elsewhere', by });
    expect((await record(done('off:panel'))).statusCode).toBe(404);
    await post('jobs', { document: { ...smallJob, title: `Job ${number}` }, by });
    expect(await doneOps()).toEqual([]);
  });
});
