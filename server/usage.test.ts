import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { usage } from '../engine/index.ts';
import { usageExample, usageKept } from '../examples/index.ts';
import type { Sheet, TableBlock } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { createServer } from './server.ts';
import { usageDocumentOf } from './usage.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
const today = () => '2026-11-25';
const send = (method: 'GET' | 'POST', url: string, payload?: object) =>
  app.inject({ method, url, ...(payload ? { payload } : {}), headers: { host, origin: `http://${host}` } });
const get = (url: string) => send('GET', `/api/shops/demo/${url}`);
const post = (url: string, payload: object) => send('POST', `/api/shops/demo/${url}`, payload);
async function page(url: string): Promise<Sheet> {
  const r = await get(url);
  expect(r.statusCode, r.body).toBe(200);
  return r.json();
}
const said = (s: Sheet) => s.answer.map((x) => x.text).join('');
const table = (s: Sheet, title: RegExp) =>
  s.blocks.find((b): b is TableBlock => b.block === 'table' && title.test(b.title));
beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today });
  await send('POST', '/api/demo', {});
});
afterAll(async () => {
  await app.close();
  await test.done();
});
const desk = () => ({ store: test.store, today });
/** Flown and counted on the last day of the picture along the part's life. */
const lastOf = (s: Sheet) =>
  s.blocks.flatMap((b) =>
    b.block === 'picture' && /counts as:/.test(b.title) ? [b.scene.table?.rows.at(-1)?.cells] : [],
  )[0];
const NAME = usageKept.name;
const { subject: _s, hours: _h, ...WHOLE } = usageExample;

describe('keeping a usage document', () => {
  it('lists what is kept, says which aircraft have none, and offers what to choose from', async () => {
    const list = await page('usage');
    expect(said(list)).toMatch(/^1 usage document is kept; 2 aircraft of the shop have none that fits\.$/);
    expect(table(list, /Kept/)?.rows.map((r) => r.cells.title)).toEqual([
      { is: 'link', text: 'Whimbrel W4, lower spar cap', href: `/demo/usage/${NAME}` },
    ]);
    expect(JSON.stringify(list)).toContain('made for W2-A');
    const choices = await page('usage/choices');
    expect(choices).toMatchObject({
      day: '2026-11-25',
      kept: [
        { name: NAME, uses: [{ use: 'private', title: 'Private flying' }, { use: 'instruction' }, { use: 'tow' }] },
      ],
      uses: expect.arrayContaining(['tow', 'private']),
      models: expect.arrayContaining(['W4', 'W2-A']),
      life_curves: expect.arrayContaining([expect.objectContaining({ library: '2024-t3-kt5' })]),
      turbulence: expect.arrayContaining([expect.objectContaining({ p1: expect.any(Number) })]),
    });
  });
  it('is kept under the name of its title, read back as it was given, withdrawn, and its history stays', async () => {
    const document = { ...WHOLE, title: 'Whimbrel  W4: wing root (été)', aeroplane: inOtherUnits() };
    const r = await post('usage', { document, by: 'M. Orne' });
    expect(r.json()).toMatchObject({ name: 'whimbrel-w4-wing-root-ete', entry: expect.any(Number) });
    const name = r.json().name as string;
    const read = await get(`usage/${name}/document`);
    expect(read.json()).toEqual(document);
    expect(read.headers.etag).toBe(`"${r.json().entry}"`);
    const yaml = await get(`usage/${name}/document?format=yaml`);
    expect(yaml.headers['content-disposition']).toContain(`usage-${name}.yaml`);
    const again = await post('usage', { document: yaml.body, by: 'Another' });
    expect(again.json()).toEqual(r.json());
    const shown = await page(`usage/${name}`);
    expect(table(shown, /taken back/)?.rows).toHaveLength(1);
    expect((await post(`usage/${name}/withdraw`, { because: 'wrong type', by: 'M. Orne' })).statusCode).toBe(200);
    const gone = await get(`usage/${name}`);
    expect(gone.statusCode).toBe(404);
    expect(gone.json().given).toMatch(/taken back on 2026-11-25 by M. Orne: wrong type/);
    expect((await post(`usage/${name}/withdraw`, { because: 'again', by: 'M. Orne' })).statusCode).toBe(404);
    expect(await test.store.bases.history('demo', 'usage', name)).toHaveLength(2);
  });
  it('two browsers: the one that saw an older one is told, and nothing is lost', async () => {
    const keep = (title: string, seed: number, after?: number) =>
      post('usage', { document: { ...WHOLE, title, sequence: { seed, flights: 10 } }, by: 'A', after });
    const first = await keep('Race', 1, 0);
    expect(first.statusCode).toBe(200);
    const second = await keep('Race', 2, 0);
    expect([second.statusCode, second.json().code]).toEqual([409, 'store.changed-meanwhile']);
    expect(second.json().given).toMatch(/was kept by A in entry/);
    expect((await keep('Race', 3, first.json().entry)).statusCode).toBe(200);
    expect((await keep('Race', 4, first.json().entry)).statusCode).toBe(409);
    expect((await keep('Race', 5)).statusCode).toBe(200);
    const [stands] = await test.store.bases.history('demo', 'usage', 'race');
    expect((await test.store.bases.get('demo', 'usage', 'race'))?.entry).toBe(stands?.entry);
    await post('usage/race/withdraw', { because: 'test', by: 'A' });
    expect((await keep('Race', 6, stands?.entry)).json().given).toMatch(/stands no more/);
  });
  it.each([
    ['nothing', {}, 422],
    ['no name', { document: WHOLE, by: '  ' }, 422],
    ['no document', { by: 'A' }, 422],
    ['text that is none', { document: '{ : ]', by: 'A' }, 422],
    ['another word', { document: { sparwright: 'growth/1' }, by: 'A' }, 422],
    ['a use twice', { document: { ...WHOLE, uses: [WHOLE.uses[0], WHOLE.uses[0]] }, by: 'A' }, 422],
    ['a field of its own', { document: { ...WHOLE, colour: 'red' }, by: 'A' }, 422],
    ['two units', { document: { ...WHOLE, aeroplane: { ...WHOLE.aeroplane, mean_chord_ft: 5 } }, by: 'A' }, 422],
  ])('%s is refused in lines, and nothing is recorded', async (_, body, status) => {
    const last = await test.store.log.last('demo');
    const r = await post('usage', body);
    expect(r.statusCode, r.body).toBe(status);
    expect(r.json()).toMatchObject({
      given: expect.any(String),
      allowed: expect.any(String),
      remedy: expect.any(String),
    });
    expect(await test.store.log.last('demo')).toBe(last);
  });
  it.each([
    ['GET', 'usage/nothing', 404],
    ['GET', 'usage/nothing/document', 404],
    ['GET', `usage/${NAME}?units=furlong`, 422],
    ['GET', `usage/${NAME}?format=doc`, 422],
    ['GET', `aircraft/nobody/usage`, 404],
    ['GET', `aircraft/aircraft:0612/usage?part=tail`, 404],
    ['GET', `aircraft/aircraft:0612/usage?day=soon`, 422],
    ['GET', `aircraft/aircraft:0612/usage?known=0`, 422],
  ])('%s %s is refused in lines', async (_, url, status) => {
    const r = await get(url);
    expect([r.statusCode, typeof r.json().remedy], r.body).toEqual([status, 'string']);
  });
});

function inOtherUnits() {
  const { mean_chord_m: _, ...rest } = WHOLE.aeroplane;
  return { ...rest, mean_chord_ft: 5 };
}

describe('of one aircraft', () => {
  it('the hours of the part, as bounds over its gap and through both its aircraft, worked by hand', async () => {
    const d = await usageDocumentOf(desk(), 'demo', { name: NAME, aircraft: 'aircraft:0612', part: 'spar:0447-L' });
    // On ZQ-HRN 1 420.2 h by 20 May 2015, of them 346.3 in the lost volume and 98 towing; on ZQ-LMB 2 628.4 h, 160 towing.
    expect(d.hours?.total).toEqual({ low_h: 4048.6, high_h: 4048.6 });
    const of = (use: string) => d.hours?.by_use.find((h) => h.use === use);
    expect(of('tow')).toEqual({ use: 'tow', low_h: 258, high_h: 604.3 });
    expect(of('private')).toEqual({ use: 'private', low_h: 3444.3, high_h: 3790.6 });
    expect(d).toMatchObject({ subject: 'ZQ-LMB, left inboard spar', day: '2026-11-25', invented: true });
  });
  it('the spare that came new has its own hours, not those of the aircraft', async () => {
    const spare = await usageDocumentOf(desk(), 'demo', {
      name: NAME,
      aircraft: 'aircraft:0447',
      part: 'spar:0447-LN',
    });
    const old = await usageDocumentOf(desk(), 'demo', { name: NAME, aircraft: 'aircraft:0447', part: 'spar:0447-R' });
    expect(old.hours!.total!.high_h - spare.hours!.total!.high_h).toBeCloseTo(1420.2, 6);
  });
  it('is a page with every part, the hardest worked first, and its evenness with the engine', async () => {
    const s = await page('aircraft/aircraft:0612/usage');
    const rows = table(s, /Every part/)!.rows;
    expect(rows.map((r) => r.id)).toContain('spar:0447-L');
    const counts = rows.map((r) => (r.cells.counts as { value: { high: number } }).value.high);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
    const worst = await usageDocumentOf(desk(), 'demo', { name: NAME, aircraft: 'aircraft:0612', part: rows[0]!.id });
    // The bounds of the document are outward to a hundredth of an hour in each use.
    expect(counts[0]).toBeLessThanOrEqual(usage.answerUsage(worst).value.equivalent!.equivalent_h.high);
    expect(counts[0]).toBeCloseTo(usage.answerUsage(worst).value.equivalent!.equivalent_h.high, 0);
    expect(s.provenance.invented).toBe(true);
    expect(table(s, /Computed with/)?.rows[0]?.cells.title).toMatchObject({ href: `/demo/usage/${NAME}` });
    const one = await page('aircraft/aircraft:0612/usage?part=spar:0612-R');
    expect(table(one, /Every part/)).toBeUndefined();
    expect(one.titleBlock.fields[0]?.value).toBe('ZQ-LMB, right inboard spar 1188');
  });
  it('as known at an earlier entry: the document kept since is not there, nor are the hours read since', async () => {
    const last = await test.store.log.last('demo');
    const kept = (await test.store.bases.history('demo', 'usage', NAME)).at(-1)!.entry;
    const before = await page(`aircraft/aircraft:0612/usage?known=${kept - 1}`);
    expect(said(before)).toMatch(/the shop keeps no usage document/);
    const reading = {
      id: 'r',
      subject: 'aircraft:0612',
      kind: 'reading',
      day: '2026-11-24',
      evidence: 'seen',
      body: { total_h: 5400, landings: 5200 },
    };
    expect((await post('entries', { entries: [reading] })).statusCode).toBeLessThan(300);
    const hours = async (known?: number) =>
      (
        await usageDocumentOf(desk(), 'demo', {
          name: NAME,
          aircraft: 'aircraft:0612',
          part: 'spar:0612-R',
          ...(known ? { known: String(known), day: '2026-11-25' } : {}),
        })
      ).hours?.total?.high_h;
    expect(await hours(last)).toBe(5318.4);
    expect(await hours()).toBe(5400);
  });
  it('papers that contradict each other: the time line takes in each of them, as the hours do', async () => {
    const s = await page('aircraft/aircraft:0447/usage?part=spar:0447-R');
    const counts = (of: Sheet) => (lastOf(of)!.counts as { value: { low: number; high: number } }).value;
    expect(counts(s).high).toBeLessThan(3700);
    const entries = [
      { day: '2026-11-22', total_h: 6000 },
      { day: '2026-11-23', total_h: 3300 },
    ].map((r, i) => ({
      id: `cross-${i}`,
      subject: 'aircraft:0447',
      kind: 'reading',
      day: r.day,
      evidence: 'seen',
      body: { total_h: r.total_h },
    }));
    expect((await post('entries', { entries })).statusCode).toBeLessThan(300);
    const after = await page('aircraft/aircraft:0447/usage?part=spar:0447-R');
    const d = await usageDocumentOf(desk(), 'demo', { name: NAME, aircraft: 'aircraft:0447', part: 'spar:0447-R' });
    expect(d.hours?.total).toEqual({ low_h: 3300, high_h: 6000 });
    expect((lastOf(after)!.flown as { value: unknown }).value).toEqual({ low: 3300, high: 6000 });
    // Hours of the lost volume are of one use, whichever reading is true: 3 000 h of private flying between the two.
    expect(counts(after).high).toBeGreaterThan(7000);
    expect(counts(after).high).toBeLessThan(counts(s).high + 6000 - 2309 + 1);
    const treat = /flown as ([\d\u202f ]+)\u00a0h/.exec(said(after))![1]!.replaceAll(/\D/g, '');
    expect(Number(treat)).toBe(Math.round(counts(after).high));
  });
  it('an aircraft that no document fits gets a page that says what is missing and where to enter it', async () => {
    const s = await page('aircraft/aircraft:2031/usage');
    expect(said(s)).toMatch(/no usage document was made for the model W2-A/);
    expect(s.because).toMatch(/made for W4, W4-T/);
    expect(JSON.stringify(s)).toContain('"/demo/usage/new"');
    const other = await page(`aircraft/aircraft:2031/usage?basis=${NAME}`);
    expect(said(other)).toMatch(/made for other models/);
    expect(JSON.stringify([said(s), s.blocks, said(other), other.blocks])).not.toMatch(/\d h\b/);
  });
  it('without a stress that has a source: ratios, and no life anywhere', async () => {
    const from = { source: 'nobody knows', known: 'invented' };
    const document = {
      ...WHOLE,
      title: 'No stress',
      place: { ...WHOLE.place, stress: { as: 'unknown', ground_share: -0.2, from } },
    };
    const kept = await post('usage', { document, by: 'A' });
    expect(kept.statusCode, kept.body).toBe(200);
    const s = await page('aircraft/aircraft:0612/usage?basis=no-stress');
    expect(s.because).toMatch(/no life is given/);
    expect(table(await page('usage'), /Kept/)?.rows.find((r) => r.id === 'no-stress')?.cells.gives).toMatchObject({
      text: expect.stringMatching(/^ratios only/),
    });
    await post('usage/no-stress/withdraw', { because: 'test', by: 'A' });
  });
  it('a document that is kept nowhere is answered, for itself and for an aircraft, in the units asked for', async () => {
    const last = await test.store.log.last('demo');
    const inch = await post('usage/answer', { document: WHOLE, units: 'inch' });
    expect(inch.statusCode, inch.body).toBe(200);
    expect(inch.body).toContain('ksi');
    const of = await post('usage/answer', {
      document: WHOLE,
      units: 'mm',
      aircraft: 'aircraft:0612',
      part: 'spar:0447-L',
    });
    expect(said(of.json())).toMatch(/4.(049|130).h flown/);
    expect(await test.store.log.last('demo')).toBe(last);
  });
  it.each([
    ['pdf', /^%PDF-/],
    ['csv', /./],
    ['xlsx', /^PK/],
  ])('as %s, the list, a document and an aircraft', async (format, begins) => {
    for (const url of ['usage', `usage/${NAME}`, 'aircraft/aircraft:0612/usage', 'aircraft/aircraft:2031/usage']) {
      const r = await get(`${url}?format=${format}`);
      expect(r.statusCode, url).toBe(200);
      expect(r.headers['content-disposition']).toMatch(new RegExp(`\\.${format}"$`));
      expect(r.rawPayload.toString('latin1')).toMatch(begins);
    }
  });
});
