import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { createServer } from './server.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today: () => '2026-11-25' });
  await app.inject({ method: 'POST', url: '/api/demo', payload: {}, headers: { host, origin: `http://${host}` } });
});
afterAll(async () => {
  await app.close();
  await test.done();
});
const problems = async (word: string, document: unknown): Promise<{ path: string; given: string }[]> => {
  const r = await app.inject({
    method: 'POST',
    url: `/api/shops/demo/${word}/check`,
    payload: { document },
    headers: { host, origin: `http://${host}` },
  });
  expect(r.statusCode, r.body).toBe(200);
  return r.json().problems;
};

it('an empty draft lacks what every document has, each at its place', async () => {
  const paths = async (word: string) => (await problems(word, { sparwright: `${word}/1` })).map((p) => p.path);
  expect(await paths('usage')).toEqual(expect.arrayContaining(['title', 'aeroplane', 'uses', 'place', 'life']));
  expect(await paths('growth')).toEqual(
    expect.arrayContaining(['title', 'place', 'geometry', 'material', 'loading', 'first_flaw', 'detectable', 'rule']),
  );
});
it('a figure under the name of another unit is taken; one out of bounds is told as it was written', async () => {
  const aeroplane = { name: 'x', limit_up: 3.8, limit_down: -1.5, wing_loading_psf: 500, mean_chord_ft: 5 };
  const said = await problems('usage', { aeroplane });
  expect(said.filter((p) => p.path.startsWith('aeroplane.'))).toMatchObject([
    { path: 'aeroplane.wing_loading_Pa', given: '500' },
    { path: 'aeroplane.from', given: 'nothing yet' },
  ]);
});
it('a growth document may name a kept usage document; what that lacks is told at its place', async () => {
  const of = async (loading: object) =>
    (await problems('growth', { loading })).map((p) => p.path).filter((p) => p.startsWith('loading'));
  expect(await of({ as: 'usage_basis', basis: 'wing', mix: 'as flown' })).toEqual([]);
  expect(await of({ as: 'usage_basis', mix: [{ use: 'tow', share: 1 }] })).toEqual(['loading.basis']);
  expect(await of({ as: 'usage_basis', basis: 'wing', mix: [{ use: 'tow', share: 7 }] })).toEqual([
    'loading.mix.0.share',
  ]);
});
it("of a material and an S-N curve of one's own it is told what they lack", async () => {
  const material = { name: 'x', law: { law: 'paris', units: 'm, MPa√m', c: 1e-11 }, yield_MPa: {}, toughness: [] };
  const growth = (await problems('growth', { material })).map((p) => p.path).filter((p) => p.startsWith('material'));
  expect(growth).toEqual(
    expect.arrayContaining(['material.law.n', 'material.law.from', 'material.yield_MPa.value', 'material.toughness']),
  );
  expect(growth).not.toContain('material.library');
  const curve = { name: 'x', a1: 9, a2: -3, a3: 0.6, a4_ksi: 12 };
  const usage = (await problems('usage', { life: { curve } })).map((p) => p.path).filter((p) => p.startsWith('life.'));
  expect(usage).toEqual(
    expect.arrayContaining(['life.curve.stress_concentration', 'life.curve.from', 'life.scatter_factor']),
  );
  expect(usage).toHaveLength(3);
});
it('whatever is given, nothing is refused', async () => {
  for (const nonsense of [
    null,
    17,
    [],
    'x',
    { geometry: { shape: 'ring' } },
    { loading: 3 },
    { uses: { a: 1 } },
    { life: { curve: [] } },
    { material: {} },
  ])
    for (const word of ['usage', 'growth']) expect((await problems(word, nonsense)).length).toBeGreaterThan(0);
});
