import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { structureKept, teardownsKept } from '../examples/index.ts';
import type { Sheet, TableBlock } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { nameOf } from './basis/keep.ts';
import { createServer } from './server.ts';
import { smallFloor, smallJob, smallWing } from './testing/small-wing.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
const today = () => '2026-11-25';
const send = (method: 'GET' | 'POST', url: string, payload?: object) =>
  app.inject({ method, url, ...(payload ? { payload } : {}), headers: { host, origin: `http://${host}` } });
const get = (url: string) => send('GET', `/api/shops/demo/${url}`);
const post = (url: string, payload: object) => send('POST', `/api/shops/demo/teardown/${url}`, payload);
async function page(url: string): Promise<Sheet> {
  const r = await get(url);
  expect(r.statusCode, r.body).toBe(200);
  return r.json();
}
const said = (s: Sheet) => s.answer.map((x) => x.text).join('');
const table = (s: Sheet, title: RegExp) =>
  s.blocks.find((b): b is TableBlock => b.block === 'table' && title.test(b.title));
const by = 'M. Orne';
const last = () => test.store.log.last('demo');

beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today });
  await send('POST', '/api/demo', {});
});
afterAll(async () => {
  await app.close();
  await test.done();
});
const JOB = teardownsKept[0].name;

describe('the demonstration', () => {
  it('keeps everything under the name that its title makes', () => {
    for (const kept of [structureKept, ...teardownsKept]) expect(nameOf(kept.document.title)).toBe(kept.name);
  });
  it.each([
    ['teardown', /^2 jobs of 2 are not finished/],
    ['teardown/maps/whimbrel-w4-wing', /65 parts held by 142 rows/],
    ['teardown/floors/ostrey-field-floor', /./],
    [`teardown/jobs/${JOB}`, /^To replace the right inboard spar/],
    [`teardown/jobs/${JOB}?page=schedule`, /./],
    [`teardown/jobs/${JOB}?page=shopping&units=inch`, /./],
    [`teardown/jobs/${JOB}?page=quote`, /crowns/],
    [`teardown/jobs/${JOB}?page=cards`, /cards/],
    ['teardown/calendar', /^2 jobs share the floor/],
    ['aircraft/aircraft:0612/teardown', /^Of ZQ-LMB 1 job is open: to replace the right inboard spar/],
  ])('%s answers', async (url, says) => {
    const s = await page(url);
    expect(s.word).toBe('teardown');
    expect(said(s)).toMatch(says);
    expect(s.provenance.invented).toBe(true);
    expect(JSON.stringify(s)).not.toMatch(/NaN|Infinity/);
  });
  it('the plan shows what was kept under its name; quote and cards carry the number alone', async () => {
    const of = (p: string) => page(`teardown/jobs/${JOB}?page=${p}`);
    const [plan, quote, cards] = [await of('plan'), await of('quote'), await of('cards')];
    expect(table(plan, /Kept and taken back/)).toBeDefined();
    for (const s of [quote, cards]) {
      expect(table(s, /Kept and taken back/)).toBeUndefined();
      expect(s.number).toBe(plan.number);
    }
  });
  it('what was recorded is done on the plan, and the quote names the aircraft and who asks the price of whom', async () => {
    const steps = (await get(`teardown/jobs/${JOB}/steps`)).json();
    const done = steps.steps.filter((s: { done: boolean; operation: string | null }) => s.operation && s.done);
    expect(done).toHaveLength(10);
    expect(steps).toMatchObject({ name: JOB, now: 10, aircraft: { id: 'aircraft:0612', registration: 'ZQ-LMB' } });
    expect(steps.last).toBe(await last());
    expect(steps.work).toHaveLength(10);
    const quote = await page(`teardown/jobs/${JOB}?page=quote`);
    expect(JSON.stringify(quote.titleBlock)).toMatch(/ZQ-LMB/);
    expect(JSON.stringify(quote.titleBlock)).toMatch(/Ostrey Field Structures/);
    const second = await page(`teardown/jobs/${teardownsKept[1].name}?page=quote`);
    expect(JSON.stringify(second.titleBlock)).toMatch(/ZQ-HRN/);
  });
  it('two jobs that need the same jig never stand in it on the same day', async () => {
    const rows = table(await page('teardown/calendar'), /^Jigs$/)!.rows;
    const stays = rows.map(({ cells }) => ({
      jig: (cells.jig as { text: string }).text,
      from: (cells.from as { day: string }).day,
      to: (cells.to as { day: string }).day,
    }));
    expect(stays.filter((x) => x.jig === 'Wing jig 2, right hand').length).toBeGreaterThanOrEqual(2);
    for (const [i, a] of stays.entries())
      for (const b of stays.slice(i + 1)) if (a.jig === b.jig) expect(a.to <= b.from || b.to <= a.from).toBe(true);
  });
  it.each(['pdf', 'csv', 'xlsx'])('every page as %s', async (format) => {
    const begins = { pdf: /^%PDF-/, csv: /./, xlsx: /^PK/ }[format]!;
    for (const url of [
      'teardown?',
      'teardown/calendar?',
      'teardown/maps/whimbrel-w4-wing?',
      'teardown/floors/ostrey-field-floor?',
      `teardown/jobs/${JOB}?page=plan&`,
      `teardown/jobs/${JOB}?page=schedule&`,
      `teardown/jobs/${JOB}?page=shopping&`,
      `teardown/jobs/${JOB}?page=quote&`,
      `teardown/jobs/${JOB}?page=cards&`,
      'aircraft/aircraft:0612/teardown?',
    ]) {
      const r = await get(`${url}format=${format}`);
      expect(r.statusCode, url).toBe(200);
      expect(r.headers['content-disposition']).toMatch(new RegExp(`\\.${format}"$`));
      expect(r.rawPayload.toString('latin1')).toMatch(begins);
    }
  });
  it('an aircraft without jobs says so, with the maps that fit and where a job begins; one that no map fits too', async () => {
    const none = await page('aircraft/aircraft:0530/teardown');
    expect(said(none)).toBe('Of ZQ-KTA nothing is to be taken apart.');
    expect(none.because).toMatch(/1 structure map fits the model W4/);
    expect(none.see?.href).toBe('/demo/teardown/new?aircraft=aircraft%3A0530');
    expect((await page('aircraft/aircraft:2031/teardown')).because).toMatch(
      /No structure map was made for the model W2-A/,
    );
  });
  it('choices: maps with their parts, floors with their crew, and where the parts of an aircraft lie on a map', async () => {
    const choices = (await get('teardown/choices?aircraft=aircraft:0612')).json();
    expect(choices).toMatchObject({
      day: '2026-11-25',
      maps: [{ name: 'whimbrel-w4-wing', models: ['W4', 'W4-T'] }],
      floors: [{ name: 'ostrey-field-floor', currency: 'crowns' }],
      of: { registration: 'ZQ-LMB', maps: ['whimbrel-w4-wing'] },
    });
    expect(choices.maps[0].has.parts).toHaveLength(65);
    const spar = choices.of.parts.find((p: { id: string }) => p.id === 'spar:0612-R');
    expect(spar.on).toEqual([{ map: 'whimbrel-w4-wing', part: 'right-inboard-spar' }]);
    const left = choices.of.parts.find((p: { id: string }) => p.id === 'spar:0447-L');
    expect(left.on).toEqual([{ map: 'whimbrel-w4-wing', part: 'left-inboard-spar' }]);
  });
});

describe('keeping maps, floors and jobs', () => {
  it('each under the name of its title, read back as it was given', async () => {
    for (const [place, document, name] of [
      ['maps', smallWing, 'small-wing'],
      ['floors', smallFloor, 'small-floor'],
      ['jobs', smallJob, 'small-job'],
    ] as const) {
      const r = await post(place, { document, by, after: 0 });
      expect(r.statusCode, r.body).toBe(200);
      expect(r.json()).toMatchObject({ name, entry: await last() });
      const read = await get(`teardown/${place}/${name}/document`);
      expect(read.json()).toEqual(document);
      expect(read.headers.etag).toBe(`"${r.json().entry}"`);
      const yaml = await get(`teardown/${place}/${name}/document?format=yaml`);
      expect((await post(place, { document: yaml.body, by: 'Another' })).json()).toEqual(r.json());
      expect((await post(place, { document: { ...document, invented: true }, by, after: 0 })).statusCode).toBe(409);
      const shown = await page(`teardown/${place}/${name}`);
      expect(table(shown, /taken back/)?.rows).toHaveLength(1);
    }
    expect(said(await page('teardown'))).toMatch(/^3 jobs of 3/);
  });
  it('a map is checked, and a job answered, without keeping either', async () => {
    const before = await last();
    const round = [
      { ...smallWing.parts[1]!, needs: ['off:tank'] },
      { ...smallWing.parts[2]!, needs: ['off:panel'] },
    ];
    const check = await post('maps/check', { document: { ...smallWing, parts: [smallWing.parts[0], ...round] } });
    expect(check.statusCode, check.body).toBe(200);
    const findings = check.json().blocks.find((b: { block: string }) => b.block === 'findings').findings;
    expect(JSON.stringify(findings)).toMatch(/never/);
    const self = { ...smallWing.parts[1]!, needs: ['off:panel'] };
    const broken = await post('maps/check', { document: { ...smallWing, parts: [smallWing.parts[0], self] } });
    expect([broken.statusCode, broken.json().code]).toEqual([422, 'teardown.map-broken']);
    for (const p of ['plan', 'schedule', 'shopping', 'quote', 'cards']) {
      const r = await post('jobs/answer', { document: smallJob, page: p, units: 'inch' });
      expect(r.statusCode, r.body).toBe(200);
    }
    const whole = { ...smallJob, map: smallWing, floor: smallFloor };
    expect(said((await post('jobs/answer', { document: whole })).json())).toMatch(/To repair the/);
    expect(await last()).toBe(before);
  });
  it.each([
    ['nothing', 'maps', {}, 422],
    ['no name', 'maps', { document: smallWing, by: ' ' }, 422],
    ['no document', 'floors', { by }, 422],
    ['text that is none', 'jobs', { document: '{ : ]', by }, 422],
    ['another word', 'floors', { document: smallWing, by }, 422],
    ['a map without parts', 'maps', { document: { ...smallWing, parts: [] }, by }, 422],
    ['a part twice', 'maps', { document: { ...smallWing, parts: [...smallWing.parts, smallWing.parts[1]] }, by }, 422],
    [
      'a negative time',
      'maps',
      { document: { ...smallWing, flip: { low_min: -1, likely_min: 1, high_min: 2 } }, by },
      422,
    ],
    ['a floor without crew', 'floors', { document: { ...smallFloor, crew: [] }, by }, 422],
    ['a job of no map', 'jobs', { document: { ...smallJob, map: undefined }, by }, 422],
    ['a map that is not kept', 'jobs', { document: { ...smallJob, map: { kept: 'nowhere' } }, by }, 404],
    ['a floor that is not kept', 'jobs', { document: { ...smallJob, floor: { kept: 'nowhere' } }, by }, 404],
    ['an aircraft of nobody', 'jobs', { document: { ...smallJob, aircraft: 'aircraft:none' }, by }, 404],
    [
      'a part that is not there',
      'jobs',
      { document: { ...smallJob, targets: [{ part: 'fin', work: 'repair' }] }, by },
      422,
    ],
    ['a field of its own', 'jobs', { document: { ...smallJob, colour: 'red' }, by }, 422],
  ])('%s is refused in three lines, and nothing is kept', async (_, place, body, status) => {
    const before = await last();
    const r = await post(place, body);
    expect(r.statusCode, r.body).toBe(status);
    for (const line of ['given', 'allowed', 'remedy']) expect(r.json()[line]).toEqual(expect.any(String));
    expect(await last()).toBe(before);
  });
  it.each([
    ['teardown/maps/nothing', 404],
    ['teardown/floors/nothing/document', 404],
    ['teardown/jobs/nothing', 404],
    ['teardown/jobs/nothing/steps', 404],
    [`teardown/jobs/${JOB}?page=bill`, 422],
    [`teardown/jobs/${JOB}?units=furlong`, 422],
    [`teardown/jobs/${JOB}?known=soon`, 422],
    ['teardown/calendar?day=soon', 422],
    ['aircraft/nobody/teardown', 404],
    ['teardown/choices?aircraft=nobody', 404],
  ])('%s is refused in lines', async (url, status) => {
    const r = await get(url);
    expect([r.statusCode, typeof r.json().remedy], r.body).toEqual([status, 'string']);
  });
  it('a map taken back: jobs on it say so, on their page, in the list and on the calendar; kept again all is well', async () => {
    expect((await post('maps/small-wing/withdraw', { because: 'wrong wing', by })).statusCode).toBe(200);
    const gone = await get('teardown/jobs/small-job');
    expect(gone.statusCode).toBe(404);
    expect(gone.json().given).toMatch(/structure map "small-wing", taken back on 2026-11-25 by M. Orne: wrong wing/);
    expect(JSON.stringify(await page('teardown'))).toMatch(/Small job: structure map/);
    expect(JSON.stringify(await page('teardown/calendar'))).toMatch(/Small job is not on the calendar/);
    await post('maps', { document: smallWing, by });
    expect((await get('teardown/jobs/small-job')).statusCode).toBe(200);
  });
  it('a job whose schedule cannot be made keeps its plan, with the reason', async () => {
    const tank = { ...smallWing.parts[2]!, skill: 'welder' };
    const document = { ...smallJob, map: { ...smallWing, parts: [...smallWing.parts.slice(0, 2), tank] } };
    const plan = await post('jobs/answer', { document, page: 'plan' });
    expect(plan.statusCode, plan.body).toBe(200);
    expect(plan.body).toMatch(/welder/);
  });
});
