import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { growthKept, usageKept } from '../examples/index.ts';
import { openDemo } from '../server/demo.ts';
import { smallFloor, smallJob, smallWing } from '../server/testing/small-wing.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';

const folder = mkdtempSync(join(tmpdir(), 'sparwright-kept-'));
let test: Awaited<ReturnType<typeof testStore>>;
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
});
afterAll(async () => {
  await test.done();
  rmSync(folder, { recursive: true, force: true });
});
function sparwright(args: string[], input = '') {
  const r = spawnSync(process.execPath, [join(rootFolder(), 'scripts', 'sparwright.mjs'), ...args], {
    cwd: folder,
    input,
    encoding: 'utf8',
    env: { ...process.env, DATABASE_URL: test.url },
  });
  return { code: r.status, out: r.stdout, err: r.stderr };
}
const SHOP = ['--shop', 'demo'];
const BY = [...SHOP, '--by', 'M. Orne'];

describe('usage and growth documents at the command line', () => {
  it('a document is kept, listed, asked and taken back', async () => {
    const text = JSON.stringify({ ...usageKept.document, title: 'Second thoughts' });
    const kept = sparwright(['keep', '-', ...BY], text);
    expect(kept.code, kept.err).toBe(0);
    expect(kept.out).toMatch(/^Kept as usage document second-thoughts, entry \d+\.\n$/);
    const list = sparwright(['ask', 'usage', ...SHOP]);
    expect(list.out).toContain('Second thoughts');
    expect(list.out).toContain(usageKept.document.title);
    const back = ['take-back', 'usage', 'second-thoughts', '--because', 'a trial', ...BY];
    expect(sparwright(back)).toMatchObject({ code: 0, out: 'usage document second-thoughts taken back.\n' });
    expect(sparwright(back)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/taken back on .* by M. Orne: a trial/),
    });
    expect(await test.store.bases.history('demo', 'usage', 'second-thoughts')).toHaveLength(2);
  });
  it('a growth document may name a kept usage document', async () => {
    const r = sparwright(['keep', '-', ...BY], JSON.stringify({ ...growthKept.document, title: 'Also a crack' }));
    expect(r.code, r.err).toBe(0);
    expect((await test.store.bases.get('demo', 'growth', 'also-a-crack'))?.document).toMatchObject({
      loading: { as: 'usage_basis', basis: usageKept.name },
    });
    const gone = JSON.stringify({
      ...growthKept.document,
      loading: { as: 'usage_basis', basis: 'nothing', mix: 'as flown' },
    });
    expect(sparwright(['keep', '-', ...BY], gone)).toMatchObject({ code: 2, err: expect.stringMatching(/"nothing"/) });
  });
  it.each(['usage', 'growth'])('%s answers one aircraft, as text and as a file', (word) => {
    const of = ['ask', word, ...SHOP, '--aircraft', 'ZQ-LMB', '--day', '2026-11-25'];
    const text = sparwright(of);
    expect(text.code, text.err).toBe(0);
    expect(text.out).toMatch(/approve nothing/i);
    const out = join(folder, `${word}.pdf`);
    expect(sparwright([...of, '--format', 'pdf', '--out', out]).out).toContain('written to');
    expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
  });
  it('a map, a floor and a job on both are kept, listed, asked and taken back', () => {
    for (const [document, as] of [
      [smallWing, 'structure map small-wing'],
      [smallFloor, 'floor small-floor'],
      [smallJob, 'teardown job small-job'],
    ] as const) {
      const kept = sparwright(['keep', '-', ...BY], JSON.stringify(document));
      expect(kept.code, kept.err).toBe(0);
      expect(kept.out).toMatch(new RegExp(`^Kept as ${as}, entry \\d+\\.\n$`));
    }
    const list = sparwright(['ask', 'teardown', ...SHOP]);
    for (const title of ['Small wing', 'Small floor', 'Small job']) expect(list.out).toContain(title);
    expect(sparwright(['ask', 'structure', ...SHOP, '--name', 'small-wing']).out).toMatch(/3 parts held by 2 rows/);
    expect(sparwright(['ask', 'floor', ...SHOP, '--name', 'small-floor']).out).toMatch(/M\. Orne/);
    const of = ['ask', 'teardown', ...SHOP, '--name', 'small-job'];
    expect(sparwright(of).out).toMatch(/approve nothing/i);
    expect(sparwright([...of, '--page', 'cards']).out).toMatch(/Take off/);
    const back = ['take-back', 'teardown', 'small-job', '--because', 'a trial', ...BY];
    expect(sparwright(back)).toMatchObject({ code: 0, out: 'teardown job small-job taken back.\n' });
    expect(sparwright(of)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/taken back on .* by M. Orne: a trial/),
    });
  }, 60_000);
  it('the jobs of one aircraft, and all jobs on the floor', () => {
    const one = sparwright(['ask', 'teardown', ...SHOP, '--aircraft', 'ZQ-LMB']);
    expect(one.code, one.err).toBe(0);
    expect(one.out).toMatch(/Of ZQ-LMB 1 job is open/);
    expect(sparwright(['ask', 'teardown', ...SHOP, '--page', 'calendar']).out).toMatch(/2 jobs share the floor/);
  }, 60_000);
  it('an aircraft that no document fits is an answer too', () => {
    const r = sparwright(['ask', 'growth', ...SHOP, '--aircraft', 'ZQ-ABR']);
    expect(r.code, r.err).toBe(0);
    expect(r.out).toMatch(/no growth document was made for the model W2-A/);
  });
  it.each([
    ['another document', ['keep', '-', ...BY], '{"sparwright":"record/1"}', /sparwright: usage\/1/],
    ['no document', ['keep', '-', ...BY], '17', /sparwright: usage\/1/],
    ['no name', ['keep', '-', ...SHOP, '--by', ' '], JSON.stringify(usageKept.document), /at by/],
    ['another word', ['ask', 'balance', ...SHOP], '', /usage, growth, structure, floor, teardown/],
    ['a page that is none', ['ask', 'teardown', ...SHOP, '--name', 'x', '--known', 'soon'], '', /entry of the log/],
    ['a job of nobody', ['ask', 'teardown', ...SHOP, '--name', 'nobody'], '', /nobody/],
    ['nobody’s aircraft', ['ask', 'usage', ...SHOP, '--aircraft', 'nobody'], '', /nobody/],
    ['a mix that is none', ['ask', 'growth', ...SHOP, '--aircraft', 'ZQ-LMB', '--mix', 'tow:x'], '', /mix/],
    ['a shop that is not there', ['ask', 'usage', '--shop', 'nowhere'], '', /nowhere/],
  ])('%s is refused in three lines', (_, args, input, says) => {
    const r = sparwright(args, input);
    expect(r.code).toBe(2);
    expect(r.err).toMatch(/^Given: {3}.*\nAllowed: .*\nDo: {6}/m);
    expect(r.err).toMatch(says);
  });
});
