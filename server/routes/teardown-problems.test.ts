import Fastify from 'fastify';
import { expect, it } from 'vitest';
import type { Desk } from '../desk.ts';
import { teardownProblemRoutes } from './teardown-problems.ts';

const desk = { store: { shops: { get: async () => ({ id: 'own' }) } } } as unknown as Desk;
async function problems(place: string, document: unknown) {
  const app = Fastify();
  app.register(async (api) => teardownProblemRoutes(api, desk));
  const answer = await app.inject({
    method: 'POST',
    url: `/shops/own/teardown/${place}/problems`,
    payload: { document },
  });
  return answer.json().problems as { path: string; given: string }[];
}
const job = {
  sparwright: 'teardown/1',
  title: 'Right spar',
  day: '2026-12-01',
  map: { kept: 'wing' },
  targets: [{ part: 'right-spar', work: 'replace' }],
  side: 'right',
};

it('a job that names a kept map, a floor and an aircraft lacks nothing', async () => {
  expect(await problems('jobs', { ...job, floor: { kept: 'shop' }, aircraft: 'aircraft:0612' })).toEqual([]);
});
it('what a job lacks is told at its place, each for itself', async () => {
  const { title: _t, ...rest } = job;
  expect(
    (await problems('jobs', { ...rest, map: {}, targets: [{ part: 'Spar 1' }, { any: [{}] }], wing: 1 })).map(
      (p) => p.path,
    ),
  ).toEqual(['map', 'title', '', 'targets.0.part', 'targets.0.work', 'targets.1.any.0.part', 'targets.1.any.0.work']);
});
it('a map within a job is read as a map', async () => {
  const found = await problems('jobs', { ...job, map: { sparwright: 'structure/1', title: 'x' } });
  expect(found.map((p) => p.path)).toContain('map.parts');
});
it('maps and floors are told the same way; what is no document at all is said, not thrown', async () => {
  expect((await problems('maps', { sparwright: 'structure/1' })).map((p) => p.path)).toContain('title');
  expect((await problems('floors', { sparwright: 'floor/1' })).map((p) => p.path)).toContain('crew');
  for (const place of ['maps', 'floors', 'jobs'])
    for (const nothing of [null, 3, 'text', []]) expect((await problems(place, nothing)).length).toBeGreaterThan(0);
});
