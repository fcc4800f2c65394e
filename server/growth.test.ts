import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { growth } from '../engine/index.ts';
import { growthExample, growthKept, usageKept } from '../examples/index.ts';
import { W14_2 } from '../examples/scenario/directives.ts';
import type { Sheet, TableBlock } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { growthDocumentOf } from './growth.ts';
import { createServer } from './server.ts';

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
const NAME = growthKept.name;
const LEFT = { name: NAME, aircraft: 'aircraft:0612', part: 'spar:0447-L' };
type Asked = Parameters<typeof growthDocumentOf>[2];
const composed = (asked: Asked) => growthDocumentOf(desk(), 'demo', asked);
const mixOf = (d: growth.GrowthDocument) => (d.loading.as === 'usage' ? d.loading.mix : null);
const w14 = (d: growth.GrowthDocument) => d.in_force?.find((l) => l.name === 'W-14');

describe('composing the question of one aircraft', () => {
  it('hours of the part through both its aircraft, the mix of lately, and what W-14 leaves, worked by hand', async () => {
    const d = await composed(LEFT);
    expect(d.flown_total).toEqual({ low_h: 4048.6, high_h: 4048.6 });
    expect(d.flown).toEqual(
      expect.arrayContaining([
        { use: 'tow', low_h: 258, high_h: 604.3 },
        { use: 'private', low_h: 3444.3, high_h: 3790.6 },
      ]),
    );
    expect(d).toMatchObject({ subject: 'ZQ-LMB, left inboard spar', day: '2026-11-25', invented: true });
    // 340 h of the 5 318.4 h of ZQ-LMB were towing: shares stated over years hold over those years.
    const tow = mixOf(d)?.find((m) => m.use === 'tow')?.share;
    expect(tow).toBeCloseTo(340 / 5318.4, 6);
    expect(mixOf(d)?.reduce((t, m) => t + m.share, 0)).toBeCloseTo(1, 9);
    // Treat as 5 428 landings and twice 1 712 towed: 8 852 counted of 9 000.
    const limit = w14(d)!;
    expect(limit.left_h).toBeGreaterThan(0);
    expect(limit.left_h).toBeLessThan(148);
    expect(limit.first_at_h).toBeCloseTo(4048.6 + limit.left_h!, 1);
    expect(limit.repeat_h).toBeLessThan(1500);
    expect(limit.reference).toMatch(/9 000 counted landings/);
    expect(growth.readGrowth(d)).toEqual(d);
  });
  it('the other spar, which was never towed through the gap, has more left; the page shows the worse first', async () => {
    const right = await composed({ ...LEFT, part: 'spar:0612-R' });
    const left = await composed(LEFT);
    expect(w14(right)!.left_h!).toBeGreaterThan(w14(left)!.left_h!);
    expect((await composed({ name: NAME, aircraft: 'aircraft:0612' })).subject).toBe(left.subject);
  });
  it.each([
    ['one use', 'tow', [{ use: 'tow', share: 1 }]],
    [
      'stated shares',
      'private:0.25,tow:0.75',
      [
        { use: 'private', share: 0.25 },
        { use: 'tow', share: 0.75 },
      ],
    ],
  ])('%s instead of the mix as flown; landings come faster, so the directive bites sooner', async (_, mix, shares) => {
    const d = await composed({ ...LEFT, mix });
    expect(mixOf(d)).toEqual(shares);
    const plain = w14(await composed(LEFT))!;
    expect(w14(d)!.left_h!).toBeLessThan(plain.left_h!);
    expect(w14(d)!.repeat_h!).toBeLessThan(plain.repeat_h!);
  });
  it('a milder mix never leaves more than the flying as it is', async () => {
    const plain = w14(await composed(LEFT))!;
    const mild = w14(await composed({ ...LEFT, mix: 'private' }))!;
    expect(mild.left_h!).toBeLessThanOrEqual(plain.left_h!);
    expect(mild.repeat_h!).toBeLessThanOrEqual(plain.repeat_h!);
  });
  it('use by use the same limits at its own landings', async () => {
    const { by_use } = w14(await composed(LEFT))!;
    const of = (use: string) => by_use!.find((u) => u.use === use)!;
    expect(by_use).toHaveLength(3);
    // Towing 850 and 412 landings in 180 and 160 h, each counted three times. Instruction is not on record.
    expect(of('tow').repeat_h!).toBeCloseTo(1500 / (3 * (1262 / 340)), 0);
    const { flight_h, landings_per_flight = 1 } = usageKept.document.uses.find((u) => u.use === 'instruction')!;
    expect(of('instruction').repeat_h!).toBeCloseTo((1500 * flight_h) / landings_per_flight, 0);
    expect(of('private').repeat_h!).toBeGreaterThan(of('tow').repeat_h!);
  });
  it('nothing of an ended or other directive is listed; one of the document alone stays unless the shop has adopted it', async () => {
    const d = await composed(LEFT);
    expect(d.in_force?.map((l) => l.name)).toEqual(['W-14']);
    const own = {
      ...growthKept.document,
      in_force: [
        { name: 'Q-1', repeat_h: 10, reference: 'of the maker' },
        { name: 'W-14', repeat_h: 1, reference: 'old' },
      ],
    };
    const both = await composed({ document: own, aircraft: 'aircraft:0612', part: 'spar:0447-L' });
    expect(both.in_force?.map((l) => [l.name, l.repeat_h])).toEqual([
      ['W-14', w14(d)!.repeat_h],
      ['Q-1', 10],
    ]);
  });
  it('an aircraft whose use no paper tells flies all of it in the use that grows a crack fastest', async () => {
    const aircraft = 'aircraft:silent';
    const entries = [
      ['aircraft', { registration: 'ZQ-SIL', type: 'Whimbrel', model: 'W4', serial: '0999', built: '2010-01-01' }],
      ['reading', { total_h: 900, landings: 1000 }],
    ].map(([kind, body], i) => ({
      id: `s${i}`,
      subject: aircraft,
      kind,
      day: i ? '2026-01-01' : '2010-01-01',
      evidence: 'seen',
      body,
    }));
    expect((await post('entries', { entries })).statusCode).toBeLessThan(300);
    const d = await composed({ name: NAME, aircraft });
    const { byUse } = growth.answerGrowth(growthExample).value;
    const fastest = byUse.reduce((a, b) => (b.ratio > a.ratio ? b : a)).use;
    expect(mixOf(d)).toEqual([{ use: fastest, share: 1 }]);
    expect(d.flown_total).toEqual({ low_h: 900, high_h: 900 });
    const s = await page(`aircraft/${aircraft}/growth`);
    expect(s.warnings[0]).toMatch(/settles no use of recent flying/);
  });
  it.each(['aircraft:0447', 'aircraft:0391'])(
    '%s: limits in hours are counted at the flying that the page assumes',
    async (aircraft) => {
      const d = await composed({ name: NAME, aircraft });
      const [only, ...more] = mixOf(d) ?? [];
      expect(more).toEqual([]);
      const limits = (d.in_force ?? []).filter((l) => l.repeat_h !== undefined);
      expect(limits.length).toBeGreaterThan(0);
      for (const l of limits) {
        const there = l.by_use!.find((u) => u.use === only!.use)!;
        expect(l.repeat_h!, l.name).toBeLessThanOrEqual(there.repeat_h!);
      }
    },
  );
});

describe('the page of one aircraft', () => {
  it('answers every part, the least left first, and is never longer than the directive', async () => {
    const s = await page('aircraft/aircraft:0612/growth');
    const rows = table(s, /Every part/)!.rows;
    expect(rows.map((r) => r.id)).toEqual(['spar:0447-L', 'spar:0612-R']);
    const left = rows.map((r) => (r.cells.left as { value: number }).value);
    expect(left).toEqual([...left].sort((a, b) => a - b));
    expect(left[0]!).toBeLessThanOrEqual(w14(await composed(LEFT))!.left_h!);
    const { value } = growth.answerGrowth(await composed(LEFT));
    expect(value.programme!.repeat_h).toBeLessThanOrEqual(w14(await composed(LEFT))!.repeat_h!);
    expect(table(s, /Computed with/)?.rows.map((r) => r.id)).toEqual([NAME, 'mix']);
  });
  it('a directive that cuts its limit cuts the answer; once it is withdrawn the old one holds', async () => {
    const before = w14(await composed(LEFT))!;
    const cut = {
      ...W14_2,
      issue: 3,
      effective: '2026-10-01',
      issued: '2026-09-01',
      supersedes: [{ number: 'W-14', issue: 2 }],
      actions: [
        {
          ...W14_2.actions[0],
          first: { counted: 8000, is: 'at' },
          repeat: { counted: 300, is: 'at', since: { last_look: [{ directive: 'W-14', action: 'first_look' }] } },
        },
        W14_2.actions[1],
      ],
      cases: [W14_2.cases[0], W14_2.cases.at(-1)],
    };
    const r = await post('directives', { text: JSON.stringify(cut), by: 'M. Orne', on: '2026-10-01' });
    expect(r.statusCode, r.body).toBe(200);
    const after = w14(await composed(LEFT))!;
    expect(after.left_h!).toBeLessThan(0);
    expect(after.repeat_h!).toBeLessThan(before.repeat_h!);
    const s = await page('aircraft/aircraft:0612/growth');
    expect((table(s, /Every part/)!.rows[0]!.cells.left as { text: string }).text).toMatch(/^overdue by/);
    await post('directives/W-14/withdraw', { issue: 3, because: 'a trial', by: 'M. Orne', on: '2026-10-01' });
    expect(w14(await composed(LEFT))).toEqual(before);
  });
  it('as known at an earlier entry', async () => {
    const [first] = await test.store.bases.history('demo', 'growth', NAME);
    const s = await page(`aircraft/aircraft:0612/growth?known=${first!.entry}`);
    expect(s.warnings.join(' ')).toMatch(/entries up to/);
    expect(said(await page(`aircraft/aircraft:0612/growth?known=${first!.entry - 1}`))).toMatch(
      /keeps no growth document/,
    );
  });
  it('a usage document that was taken back is missed, and the page says by whom', async () => {
    const document = { ...usageKept.document, title: 'For a while' };
    await post('usage', { document, by: 'A' });
    const crack = {
      ...growthKept.document,
      title: 'Rests on it',
      loading: { as: 'usage_basis', basis: 'for-a-while', mix: 'as flown' },
    };
    expect((await post('growth', { document: crack, by: 'A' })).statusCode).toBe(200);
    await post('usage/for-a-while/withdraw', { because: 'the tables were of another type', by: 'B. Lead' });
    const s = await page('aircraft/aircraft:0612/growth?basis=rests-on-it');
    expect(s.because).toMatch(/taken back on 2026-11-25 by B. Lead: the tables were of another type/);
    expect(JSON.stringify(table(await page('growth'), /Kept/)?.rows)).toContain('it cannot be read');
    const own = await get('growth/rests-on-it');
    expect([own.statusCode, own.json().code]).toEqual([404, 'server.not-found']);
    expect((await post('growth', { document: { ...crack, title: 'New' }, by: 'A' })).statusCode).toBe(404);
    await post('growth/rests-on-it/withdraw', { because: 'test', by: 'A' });
  });
  it('without a stress that has a source: ratios between uses, hours nowhere', async () => {
    const from = { source: 'nobody knows', known: 'invented' };
    const loads = {
      ...usageKept.document,
      title: 'No stress',
      place: { ...usageKept.document.place, stress: { as: 'unknown', ground_share: -0.2, from } },
    };
    expect((await post('usage', { document: loads, by: 'A' })).statusCode).toBe(200);
    const { limit_stress: _, ...crack } = growthKept.document;
    const document = { ...crack, title: 'Ratios', loading: { as: 'usage_basis', basis: 'no-stress', mix: 'as flown' } };
    const kept = await post('growth', { document, by: 'A' });
    expect(kept.statusCode, kept.body).toBe(200);
    const s = await page('aircraft/aircraft:0612/growth?basis=ratios');
    expect(table(s, /Every part/)!.rows.every((r) => r.cells.left?.is === 'nothing')).toBe(true);
    expect(said(s)).not.toMatch(/\d h\b/);
    for (const name of ['growth/ratios', 'usage/no-stress'])
      await post(`${name}/withdraw`, { because: 'test', by: 'A' });
  });
  it('an aircraft that no document fits is told what is missing and where to enter it', async () => {
    const s = await page('aircraft/aircraft:2031/growth');
    expect(said(s)).toMatch(/no growth document was made for the model W2-A/);
    expect(JSON.stringify(s)).toContain('"/demo/growth/new"');
  });
});

describe('documents of the shop', () => {
  it('lists, chooses, keeps with the name of a usage document, and answers alone as hard as can be', async () => {
    expect(said(await page('growth'))).toMatch(/^1 growth document is kept; 2 aircraft/);
    expect(await page('growth/choices')).toMatchObject({
      kept: [{ name: NAME, uses: [{ use: 'private' }, { use: 'instruction' }, { use: 'tow' }] }],
      usage: [{ name: usageKept.name }],
      materials: expect.arrayContaining([
        expect.objectContaining({ library: '2024-t3', laws: expect.arrayContaining(['walker']) }),
      ]),
    });
    const s = await page(`growth/${NAME}`);
    expect(s.warnings[0]).toMatch(/No aircraft is named/);
    expect(await (await get(`growth/${NAME}/document`)).json()).toEqual(
      JSON.parse(JSON.stringify(growthKept.document)),
    );
    const mild = await composed({ name: NAME, mix: 'private' });
    const alone = await composed({ name: NAME });
    const hours = (d: growth.GrowthDocument) => growth.answerGrowth(d).value.firstToCritical_h!;
    expect(hours(alone)).toBeLessThan(hours(mild));
  });
  it.each([
    ['growth/nothing', 404],
    [`growth/${NAME}?units=ell`, 422],
    [`growth/${NAME}?mix=banner`, 422],
    ['aircraft/aircraft:0612/growth?mix=tow:x', 422],
    ['aircraft/aircraft:0612/growth?mix=tow:0.4', 422],
    ['aircraft/aircraft:0612/growth?mix=tow:0.5,tow:0.5', 422],
    ['aircraft/aircraft:0612/growth?part=tail', 404],
    ['aircraft/nobody/growth', 404],
  ])('%s is refused in lines', async (url, status) => {
    const r = await get(url);
    expect([r.statusCode, typeof r.json().remedy], r.body).toEqual([status, 'string']);
  });
  it.each([
    ['a hole wider than the plate', { geometry: { ...growthExample.geometry, diameter_mm: 90 } }],
    ['a loading that names nothing', { loading: { as: 'usage_basis', mix: 'as flown' } }],
    [
      'a mix of a use that is not there',
      { loading: { as: 'usage_basis', basis: usageKept.name, mix: [{ use: 'banner', share: 1 }] } },
    ],
    ['no loading', { loading: undefined }],
    ['a million flaws', { first_flaw: [] }],
  ])('%s is refused in lines, and nothing is recorded', async (_, over) => {
    const last = await test.store.log.last('demo');
    const r = await post('growth', { document: { ...growthKept.document, ...over }, by: 'A' });
    expect([r.statusCode, typeof r.json().remedy], r.body).toEqual([422, 'string']);
    expect(await test.store.log.last('demo')).toBe(last);
  });
  it.each(['pdf', 'csv', 'xlsx'])('as %s', async (format) => {
    for (const url of ['growth', `growth/${NAME}`, 'aircraft/aircraft:0612/growth', 'aircraft/aircraft:2031/growth']) {
      const r = await get(`${url}?format=${format}&units=inch`);
      expect(r.statusCode, `${url} ${r.body.slice(0, 200)}`).toBe(200);
      expect(r.rawPayload.length).toBeGreaterThan(100);
    }
  });
});

describe('a long sequence', () => {
  const from = { source: 'Invented for demonstration', known: 'invented' };
  const cycles = Array.from({ length: 30_000 }, (_, i) => [100 + (i % 7), i % 5]);
  const document = (over: object) => ({
    ...growthKept.document,
    title: 'Long',
    interaction: { as: 'none' },
    loading: { as: 'sequence', cycles_MPa: cycles, hours: 4000, from },
    ...over,
  });
  it('is answered as the engine answers it, and of one aircraft under its directives', async () => {
    const d = await composed({ document: document({}), aircraft: 'aircraft:0612', part: 'spar:0447-L' });
    expect(growth.readGrowth(JSON.parse(JSON.stringify(d)))).toEqual(d);
    expect(w14(d)!.left_h).toBe(w14(await composed(LEFT))!.left_h);
    const r = await post('growth/answer', { document: document({}), units: 'mm' });
    expect(r.statusCode, r.body).toBe(200);
  });
  it('in ksi is the same in MPa', async () => {
    const ksi = cycles.map((c) => c.map((s) => s / 6.894757293168361));
    const asked = (loading: object) => ({ document: document({ loading }), units: 'mm' });
    const [inMPa, inKsi] = [
      await post('growth/answer', asked({ as: 'sequence', cycles_MPa: cycles, hours: 4000, from })),
      await post('growth/answer', asked({ as: 'sequence', cycles_ksi: ksi, hours: 4000, from })),
    ];
    expect(inKsi.statusCode, inKsi.body.slice(0, 300)).toBe(200);
    expect(inKsi.json().answer).toEqual(inMPa.json().answer);
    const both = await post(
      'growth/answer',
      asked({ as: 'sequence', cycles_MPa: cycles, cycles_ksi: ksi, hours: 1, from }),
    );
    expect([both.statusCode, both.json().code]).toEqual([422, 'foundation.two-units']);
  });
  it.each([
    ['one line of it is none', [...cycles, [1]]],
    ['one line is text', [...cycles, ['1', '2']]],
    ['one line is beyond all stress', [...cycles, [9999, 0]]],
    ['one line is nothing', [...cycles, null]],
    ['there are too many', Array.from({ length: 2_000_001 }, () => [1, 0])],
  ])('%s: refused in lines', async (_, bad) => {
    const r = await post('growth', {
      document: document({ loading: { as: 'sequence', cycles_MPa: bad, hours: 4000, from } }),
      by: 'A',
    });
    expect([r.statusCode, r.json().code], r.body.slice(0, 300)).toEqual([422, 'foundation.document-invalid']);
    expect(r.json().given).toMatch(/loading\.cycles_MPa/);
  });
});
