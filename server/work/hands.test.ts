import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { growth } from '../../engine/index.ts';
import { growthExample } from '../../examples/index.ts';
import { PROGRAM } from '../version.ts';
import { Hands } from './hands.ts';
import { computePart, type WorkTask } from './part.ts';
import { Works } from './works.ts';

const folder = mkdtempSync(join(tmpdir(), 'work-'));
const worker = join(folder, 'work-worker.mjs');
const fileOf = (name: string, text: string): URL => {
  writeFileSync(join(folder, name), text);
  return pathToFileURL(join(folder, name));
};
const document = growth.zGrowthDocument.parse({ ...growthExample, chance: { ...growthExample.chance!, lives: 300 } });
const input: growth.ChanceTask = { document, programme: { first_h: 3000, repeat_h: 1000 }, critical_c_mm: 12 };
const text = JSON.stringify(input);
const bytes = new SharedArrayBuffer(new TextEncoder().encode(text).length);
new Uint8Array(bytes).set(new TextEncoder().encode(text));
const part = (from: number, to: number): WorkTask => ({
  task: 'growth chance',
  version: PROGRAM,
  hash: createHash('sha256').update(text).digest('hex'),
  input: bytes,
  seed: 4,
  from,
  to,
});
const asked = {
  task: 'growth chance' as const,
  input,
  seed: 4,
  items: 300,
  reduce: (parts: readonly growth.Lives[]) => growth.chanceFrom(growth.prepareChance(input), parts),
};

beforeAll(async () => {
  const entry = fileURLToPath(new URL('./worker.ts', import.meta.url));
  await build({
    entryPoints: [entry],
    outfile: worker,
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
afterEach(() => {
  vi.restoreAllMocks();
});

describe('threads', () => {
  it('give the same answer as none, to the last digit', async () => {
    const alone = new Works(new Hands(false));
    const together = new Works(new Hands(true, pathToFileURL(worker), 3));
    const [one, many] = await Promise.all([alone.ended(alone.begin(asked)), together.ended(together.begin(asked))]);
    expect(one.result).toBeDefined();
    expect(many.result).toEqual(one.result);
    await Promise.all([alone.close(), together.close()]);
  });

  it('a refusal comes through them with its lines', async () => {
    const hands = new Hands(true, pathToFileURL(worker), 1);
    const bad = JSON.stringify({ ...input, document: { ...document, limit_stress: undefined } });
    const shared = new SharedArrayBuffer(new TextEncoder().encode(bad).length);
    new Uint8Array(shared).set(new TextEncoder().encode(bad));
    const answer = await hands.compute({ ...part(0, 5), hash: 'bad', input: shared });
    expect('refusal' in answer && answer.refusal.code).toBe('growth.chance-incomplete');
    await hands.close();
  });

  it('closed in the middle, what is under way is told so', async () => {
    const said = vi.spyOn(process.stderr, 'write').mockImplementation(() => true);
    const works = new Works(new Hands(true, pathToFileURL(worker), 2));
    const id = works.begin({ ...asked, items: 300 });
    await works.close();
    expect(works.look(id).refusal?.detail.given).toMatch(/closing/);
    expect(said).not.toHaveBeenCalled();
  });

  const gone = fileOf('gone.mjs', '');
  rmSync(fileURLToPath(gone));
  it.each([
    ['its file is gone', gone],
    ['a module of it is gone', fileOf('missing.mjs', "import 'a-package-that-is-not-there'; export default () => 1;")],
    ['it ends at once', fileOf('ends.mjs', 'process.exit(3)')],
    ['it is of another version', fileOf('other.mjs', "export default () => '9.9.9';")],
  ])('where none answers (%s) the work is done without, and it is said once', async (_, file) => {
    const said = vi.spyOn(process.stderr, 'write').mockImplementation(() => true);
    const hands = new Hands(true, file, 2, 4000);
    const parts = await Promise.all([hands.compute(part(0, 3)), hands.compute(part(3, 5))]);
    expect(parts).toEqual([computePart(part(0, 3)), computePart(part(3, 5))]);
    expect(hands.lanes).toBe(1);
    expect(said.mock.calls.filter(([t]) => String(t).startsWith('Long work is done beside'))).toHaveLength(1);
    await hands.close();
  });

  it('one that dies after it has answered is a fault of that work, and the next work is done', async () => {
    vi.spyOn(process.stderr, 'write').mockImplementation(() => true);
    const file = fileOf(
      'dies.mjs',
      `import compute from './work-worker.mjs';
       export default (t) => t.from === 100 ? process.exit(1) : compute(t);`,
    );
    const works = new Works(new Hands(true, file, 1));
    const dead = await works.ended(works.begin(asked));
    expect(dead.refusal?.code).toBe('server.fault');
    const short = { ...input, document: { ...document, chance: { ...document.chance!, lives: 60 } } };
    const next = await works.ended(
      works.begin({
        ...asked,
        input: short,
        items: 60,
        reduce: (parts) => growth.chanceFrom(growth.prepareChance(short), parts),
      }),
    );
    expect(next.result).toBeDefined();
    await works.close();
  });
});
