import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { teardownExample } from '../examples/index.ts';
import { openDemo } from '../server/demo.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';

const folder = mkdtempSync(join(tmpdir(), 'sparwright-cli-'));
let test: Awaited<ReturnType<typeof testStore>>;
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
});
afterAll(async () => {
  await test.done();
  rmSync(folder, { recursive: true, force: true });
});

/** A command as a person types it, from another folder. */
function sparwright(args: string[], input = '') {
  const r = spawnSync(process.execPath, [join(rootFolder(), 'scripts', 'sparwright.mjs'), ...args], {
    cwd: folder,
    input,
    encoding: 'utf8',
    env: { ...process.env, DATABASE_URL: test.url },
  });
  return { code: r.status, out: r.stdout, err: r.stderr };
}

describe('a word answers its own example', () => {
  it.each(['record', 'directive', 'outlook'])('%s, as text and as JSON, from standard input', (word) => {
    const example = sparwright(['example', word]);
    expect(example.code).toBe(0);
    const text = sparwright([word, '-'], example.out);
    expect(text).toMatchObject({ code: 0, err: '' });
    expect(text.out).toMatch(/approve nothing|APPROVE/i);
    const json = sparwright([word, '-', '--json'], example.out);
    expect(json.code).toBe(0);
    expect(Object.keys(JSON.parse(json.out))).toEqual(['value', 'working', 'warnings']);
    expect(JSON.parse(sparwright(['example', word, '--json']).out)).toEqual(parse(example.out));
    const schema = JSON.parse(sparwright(['schema', word]).out) as object;
    expect(JSON.stringify(schema)).toContain('sparwright');
  });
});

describe('exit 2 and three lines', () => {
  it.each([
    ['an unknown word', ['example', 'nonsense'], ''],
    ['a file that is not there', ['record', 'nowhere.yaml'], ''],
    ['an empty document', ['record', '-'], ''],
    ['an unknown field', ['record', '-'], 'sparwright: record/1\nday: 2026-01-01\nentries: []\nsurprise: 1\n'],
    ['neither YAML nor JSON', ['outlook', '-'], '{ : ]'],
    ['another version', ['directive', '-'], 'sparwright: directive/9\n'],
  ])('%s', (_, args, input) => {
    const r = sparwright(args, input);
    expect(r.code).toBe(2);
    expect(r.out).toBe('');
    expect(r.err).toMatch(/^Given: .*\nAllowed: .*\nDo: /m);
  });
});

it.skipIf(process.platform === 'win32')('a reader that closes the pipe at once is no fault', () => {
  const command = join(rootFolder(), 'scripts', 'sparwright.mjs');
  const line = `{ "${process.execPath}" "${command}" example teardown; echo "exit $?" >&2; } | true`;
  const r = spawnSync('sh', ['-c', line], { cwd: folder, encoding: 'utf8' });
  expect(r.stderr).toBe('exit 0\n');
});

describe('a job as a shop keeps it, asked without the shop', () => {
  const kept = { ...teardownExample, map: { kept: 'right-wing' }, floor: { kept: 'our-floor' }, aircraft: 'ZQ-LMB' };
  it.each([[[]], [['--json']]])('is told what is kept there, and what to do (%s)', (more) => {
    const r = sparwright(['teardown', '-', ...more], JSON.stringify(kept));
    expect([r.code, r.out]).toEqual([2, '']);
    expect(r.err).toMatch(/its map is kept in a shop, as "right-wing"; its floor .* "our-floor"; .* aircraft "ZQ-LMB"/);
    expect(r.err).toMatch(
      /Do: .*sparwright ask teardown --shop SHOP --name NAME.*whole map.*whole floor.*aircraft out/,
    );
  });
  it('with its own map only the floor is missed; a map that is wrong is refused as that', () => {
    const floor = sparwright(['teardown', '-'], JSON.stringify({ ...teardownExample, floor: kept.floor }));
    expect([floor.code, floor.err]).toEqual([2, expect.stringMatching(/^Given: {3}teardown job, its floor is kept/)]);
    expect(floor.err).not.toContain('map is kept');
    const wrong = sparwright(['teardown', '-'], JSON.stringify({ ...teardownExample, map: { keep: 'right-wing' } }));
    expect([wrong.code, wrong.err]).toEqual([2, expect.stringMatching(/at map\.sparwright/)]);
  });
});

describe('commands that use the store, beside a running server', () => {
  it('import shows first, writes with --write, and finds the same rows again', async () => {
    const file = join(folder, 'fen.csv');
    writeFileSync(
      file,
      'Date,Total hours,Total landings\n2026-08-14,366.4,761\n2026-09-30,371.2,772\n2027-99-99,1,1\n',
    );
    const look = sparwright(['import', file, '--shop', 'demo', '--aircraft', 'ZQ-FEN']);
    expect(look).toMatchObject({ code: 0, out: expect.stringContaining('2 rows accepted, 1 refused') });
    const before = await test.store.log.last('demo');
    expect(sparwright(['import', file, '--shop', 'demo', '--aircraft', 'ZQ-FEN', '--write']).code).toBe(0);
    expect(await test.store.log.last('demo')).toBeGreaterThan(before);
    const again = sparwright(['import', file, '--shop', 'demo', '--aircraft', 'ZQ-FEN']);
    expect(again.out).toContain('0 rows accepted, 3 refused');
  });
  it('letter writes the PDF and keeps it under its number', async () => {
    const out = join(folder, 'letter.pdf');
    const args = [
      'letter',
      '--shop',
      'demo',
      '--aircraft',
      'ZQ-LMB',
      '--directive',
      'W-14',
      '--out',
      out,
      '--by',
      'M. Orne',
      '--day',
      '2026-11-25',
    ];
    const r = sparwright(args);
    expect(r).toMatchObject({ code: 0, err: '' });
    expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
    expect(await test.store.letters.list('demo', 'aircraft:0612')).toHaveLength(1);
  });
});
