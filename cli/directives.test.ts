import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { W9 } from '../examples/scenario/directives.ts';
import { openDemo } from '../server/demo.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';

let test: Awaited<ReturnType<typeof testStore>>;
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
});
afterAll(() => test.done());

function sparwright(args: string[], input = '') {
  const r = spawnSync(process.execPath, [join(rootFolder(), 'scripts', 'sparwright.mjs'), ...args], {
    input,
    encoding: 'utf8',
    env: { ...process.env, DATABASE_URL: test.url },
  });
  return { code: r.status, out: r.stdout, err: r.stderr };
}
const next = JSON.stringify({ ...W9, issue: 2, affects: { models: [{ model: 'W4' }] } });

describe('a directive at the command line', () => {
  it('is tried, adopted and withdrawn', async () => {
    const tried = sparwright(['try', '-', '--shop', 'demo', '--day', '2026-11-25'], next);
    expect(tried.code, tried.err).toBe(0);
    expect(tried.out).toMatch(/\d+ of 12 affected, \d+ due this year, \d+ hangs? on a missing paper\./);
    expect(tried.out).toMatch(/no longer affected/);
    expect(await test.store.directives.list('demo')).toHaveLength(5);
    const by = ['--shop', 'demo', '--by', 'M. Orne', '--on', '2026-11-25'];
    expect(sparwright(['adopt', '-', ...by], next)).toMatchObject({ code: 0, out: 'W-9 issue 2 adopted.\n' });
    const back = ['withdraw', 'W-9', '--issue', '2', '--because', 'Wrong models', ...by];
    expect(sparwright(back)).toMatchObject({ code: 0, out: 'W-9 issue 2 withdrawn from 2026-11-25 on.\n' });
    expect(await test.store.directives.withdrawn('demo')).toMatchObject([{ number: 'W-9', issue: 2, by: 'M. Orne' }]);
    expect(sparwright(back)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/withdrawn on 2026-11-25 by M. Orne/),
    });
  });
  it.each([
    [
      'a rule whose case fails',
      ['try', '-'],
      next.replace('"not yet due"', '"overdue"'),
      /1 of its own test cases fail/,
    ],
    ['text that is no directive', ['adopt', '-', '--by', 'A'], 'a: 1', /directive/],
    ['no name', ['adopt', '-', '--by', ' '], next, /at by/],
    ['an issue that is no number', ['withdraw', 'W-9', '--issue', 'x', '--because', 'y', '--by', 'A'], '', /at issue/],
    ['a shop that is not there', ['try', '-', '--shop', 'nowhere'], next, /nowhere/],
  ])('%s is refused in three lines', (_, args, input, says) => {
    const r = sparwright(args, input);
    expect(r.code).toBe(2);
    expect(r.err).toMatch(/^Given: {3}.*\nAllowed: .*\nDo: {6}/m);
    expect(r.err).toMatch(says);
  });
});
