import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { build } from 'esbuild';
import pg from 'pg';
import type { Day } from '../../engine/index.ts';
import { usageKept } from '../../examples/index.ts';
import { openCluster } from '../../store/cluster/index.ts';
import { openStore, rootFolder, type Store, verifyBackupFile } from '../../store/index.ts';
import { smallJob, smallWing } from './small-wing.ts';

export type Victim = 'server' | 'database' | 'backend';
export type Work = 'entries' | 'import' | 'adopt' | 'keep' | 'record' | 'letter' | 'backup';

/** What was sent, and whether the program said yes. A thing is in the store whole or not at all; said yes, it is there. */
interface Sent {
  readonly work: Work;
  readonly mark: string;
  acknowledged: boolean;
}

const SHOP = 'kills';
const IMPORT_ROWS = 40;
const BATCH = 3;
const PAUSE_ms = 200;
const BROUGHT = 'brought';
const base = process.getuid?.() === 0 ? '/var/tmp' : tmpdir();

/** The program bundled once, so that a start is quick and nobody else's build comes between. */
async function bundle(folder: string): Promise<void> {
  await build({
    absWorkingDir: rootFolder(),
    entryPoints: { server: 'server/main.ts', cli: 'cli/main.ts' },
    outdir: folder,
    bundle: true,
    packages: 'external',
    platform: 'node',
    target: 'node20',
    format: 'esm',
    logLevel: 'error',
    loader: { '.sql': 'text', '.yaml': 'text' },
    outExtension: { '.js': '.mjs' },
  });
}

const entry = (mark: string, i: number) => ({
  id: `${mark}-${i}`,
  subject: 'aircraft:killed',
  kind: 'event',
  day: '2020-01-01',
  order: i,
  evidence: 'seen',
  body: { event: 'annual_inspection', detail: mark },
});

const directive = (number: string) => ({
  sparwright: 'directive/1',
  number,
  issue: 1,
  title: 'Invented for the trial',
  authority: 'Invented',
  rank: 'directive',
  issued: '2019-01-01',
  effective: '2019-01-01',
  reference: 'made up for the trial',
  known: 'invented',
  affects: {},
  actions: [
    {
      id: 'look',
      title: 'Look',
      does: 'inspect',
      looks_at: 'aircraft',
      counts: { expression: 'hours.total', called: 'hours', unit: 'h' },
      first: { counted: 9000, is: 'at' },
      missing_papers: 'bounds',
    },
  ],
  cases: [{ name: 'new', action: 'look', day: '2020-01-01', facts: {}, expect: { standing: 'not yet due' } }],
});

/** A real program on a real folder, work from many sides through HTTP, and kills. */
export class Trial {
  readonly folder: string;
  readonly #program: string;
  #child: ChildProcess | null = null;
  url = '';
  #number = 0;
  #stopped = false;
  readonly sent: Sent[] = [];
  readonly answers: Record<string, number> = {};
  readonly kills: Record<Victim, number> = { server: 0, database: 0, backend: 0 };

  readonly #largest_blocks: number | null;

  private constructor(folder: string, largest_blocks: number | null) {
    this.folder = folder;
    this.#largest_blocks = largest_blocks;
    const home = join(rootFolder(), '.sparwright');
    mkdirSync(home, { recursive: true });
    this.#program = mkdtempSync(join(home, 'kills-'));
  }

  /** @param largest_blocks no file of the database grows beyond so many blocks of 512 bytes; null: as the disk allows */
  static async open(
    folder = mkdtempSync(join(base, 'sparwright-kills-')),
    largest_blocks: number | null = null,
  ): Promise<Trial> {
    const trial = new Trial(folder, largest_blocks);
    await bundle(trial.#program);
    await trial.start();
    await trial.#withStore((s) => s.shops.open({ id: SHOP, name: 'Kills', invented: false }));
    await trial.#post('entries', {
      entries: [
        {
          id: 'a',
          subject: 'aircraft:killed',
          kind: 'aircraft',
          day: '2000-01-01',
          evidence: 'seen',
          body: { registration: 'ZZ-KIL', type: 'T', model: 'M', serial: '1', built: '2000-01-01' },
        },
      ],
    });
    await trial.#post('directives', { text: JSON.stringify(directive('FIRST')), by: 'M. Orne', on: '2020-01-01' });
    const { floor: _, ...job } = smallJob;
    await trial.#post('teardown/jobs', { document: { ...job, map: smallWing }, by: 'M. Orne' });
    return trial;
  }

  get #env() {
    return { ...process.env, SPARWRIGHT_DATA: this.folder, PORT: '0', DATABASE_URL: '' };
  }

  async start(): Promise<void> {
    const node = [process.execPath, join(this.#program, 'server.mjs')];
    // A shell's limit on the size of a file is the disk that is full everywhere, for any user.
    const limited = ['sh', '-c', `ulimit -f ${this.#largest_blocks}; exec "$@"`, 'sh', ...node];
    const [command, ...args] = this.#largest_blocks ? limited : node;
    const child = spawn(command!, args, {
      env: this.#env,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    this.#child = child;
    this.url = await new Promise((resolve, reject) => {
      let said = '';
      child.stdout!.on('data', (d) => {
        said += d;
        const found = /is ready: (http:\S+)/.exec(said);
        if (found?.[1]) resolve(found[1]);
      });
      child.once('exit', (code) => reject(new Error(`the program did not start: ${code}`)));
    });
  }

  async #post(path: string, body: unknown): Promise<Response> {
    const r = await fetch(`${this.url}/api/shops/${SHOP}/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: this.url },
      body: JSON.stringify(body),
    });
    this.answers[r.status] = (this.answers[r.status] ?? 0) + 1;
    return r;
  }

  append(mark: string): Promise<Response> {
    return this.#post('entries', { entries: Array.from({ length: BATCH }, (_, i) => entry(mark, i)) });
  }

  upload(bytes: Uint8Array<ArrayBuffer>): Promise<Response> {
    const form = new FormData();
    form.append('file', new Blob([bytes]), 'scan.bin');
    return fetch(`${this.url}/api/shops/${SHOP}/files`, { method: 'POST', headers: { origin: this.url }, body: form });
  }

  command(...args: string[]) {
    return spawnSync(process.execPath, [join(this.#program, 'cli.mjs'), ...args], { env: this.#env, encoding: 'utf8' });
  }

  async importOnce(mark: string): Promise<Response> {
    const rows = Array.from(
      { length: IMPORT_ROWS },
      (_, i) => `2010-01-${String((i % 28) + 1).padStart(2, '0')},${i + 1}.0,${i + 1}`,
    );
    const form = new FormData();
    // Its own comment makes each file, and so its name in the store, another one.
    form.append(
      'file',
      new Blob([`Date,Total hours,Total landings\n${[...new Set(rows)].join('\n')}\n,,${mark}\n`]),
      'log.csv',
    );
    const read = await fetch(`${this.url}/api/shops/${SHOP}/import/read`, {
      method: 'POST',
      headers: { origin: this.url },
      body: form,
    });
    if (!read.ok) return read;
    const { importId, mapping } = (await read.json()) as { importId: string; mapping: unknown };
    const aircraft = { registration: mark, type: 'T', model: 'M', serial: mark, built: '2000-01-01' };
    return this.#post(`import/${importId}/commit`, { mapping, aircraft });
  }

  #do(work: Work, mark: string): Promise<Response> {
    if (work === 'entries') return this.append(mark);
    if (work === 'import') return this.importOnce(mark);
    if (work === 'adopt')
      return this.#post('directives', { text: JSON.stringify(directive(mark)), by: 'M. Orne', on: '2020-01-01' });
    if (work === 'keep')
      return this.#post('usage', { document: { ...usageKept.document, title: mark }, by: 'M. Orne' });
    if (work === 'record') {
      const row = { what: 'holes', join: 'row-panel', elongated: 0, on: '2020-01-01', by: mark };
      const records = Array.from({ length: BATCH }, (_, i) => ({ ...row, oversize: i }));
      return this.#post('teardown/jobs/small-job/work', { records, by: 'M. Orne' });
    }
    if (work === 'letter')
      return this.#post('letters', { aircraft: 'aircraft:killed', directive: 'FIRST', day: '2026-11-25' });
    return fetch(`${this.url}/api/backup`);
  }

  /** Works until the trial stops, one thing after the other; a no or a broken line is tried again with another thing. */
  async work(work: Work): Promise<void> {
    while (!this.#stopped) {
      const sent: Sent = { work, mark: `${work}-${this.#number++}`, acknowledged: false };
      this.sent.push(sent);
      try {
        const r = await this.#do(work, sent.mark);
        await r.arrayBuffer();
        sent.acknowledged = r.ok;
        if (!r.ok) throw new Error(String(r.status));
        await sleep(Math.random() * PAUSE_ms); // a letter is kept only while nobody else writes
      } catch {
        await sleep(30);
      }
    }
  }

  /** Things written and said yes to. */
  get acknowledged(): number {
    return this.sent.filter((s) => s.acknowledged && s.work !== 'backup').length;
  }

  async untilMore(more = 3): Promise<void> {
    const before = this.acknowledged;
    for (let i = 0; this.acknowledged < before + more; i++) {
      if (i > 6000) throw new Error('the program did not come back');
      await sleep(10);
    }
  }

  /** SIGKILL. The server is started again by us; the database must be started again by the server. */
  async kill(victim: Victim): Promise<void> {
    const done = victim === 'server' ? await this.#killServer() : this.#killDatabase(victim);
    if (done) this.kills[victim]++;
    if (victim === 'server') await this.start();
  }

  async #killServer(): Promise<boolean> {
    const child = this.#child!;
    const gone = new Promise((r) => child.once('exit', r));
    const done = child.kill('SIGKILL');
    await gone;
    return done;
  }

  #killDatabase(victim: Victim): boolean {
    try {
      const postmaster = Number(readFileSync(join(this.folder, 'cluster', 'postmaster.pid'), 'utf8').split('\n')[0]);
      const pid = victim === 'database' ? postmaster : childOf(postmaster);
      if (pid === null) return false;
      process.kill(pid, 'SIGKILL');
      return true;
    } catch {
      return false;
    }
  }

  async #withStore<T>(work: (store: Store) => Promise<T>): Promise<T> {
    const store = await openStore({ folder: this.folder });
    try {
      return await work(store);
    } finally {
      await store.close();
    }
  }

  /** Has the database begin its next journal file, as often as it can. */
  async switchJournal(times: number): Promise<void> {
    const cluster = await openCluster(this.folder);
    const client = new pg.Client(cluster.address('sparwright'));
    client.on('error', () => {});
    try {
      await client.connect();
      for (let i = 0; i < times; i++)
        await client.query(`select pg_logical_emit_message(true, 'trial', 'x'), pg_switch_wal()`);
    } catch {
      /* it stopped, as it should */
    }
    await client.end().catch(() => {});
    await cluster.close().catch(() => {});
  }

  /** A command of this program, killed after some time. Null: it was killed before it ended. */
  async #cutShort(after_ms: number, ...args: string[]): Promise<number | null> {
    const child = spawn(process.execPath, [join(this.#program, 'cli.mjs'), ...args], {
      env: this.#env,
      stdio: 'ignore',
    });
    const ended = new Promise<number | null>((r) => child.once('exit', r));
    setTimeout(() => child.kill('SIGKILL'), after_ms).unref();
    return ended;
  }

  /** `sparwright backup` killed: no file, or a whole one. */
  async cutBackup(after_ms: number): Promise<{ ended: boolean; wrong: string[] }> {
    const file = join(this.folder, `cut-${this.#number++}.jsonl.gz`);
    const ended = (await this.#cutShort(after_ms, 'backup', file)) === 0;
    const there = existsSync(file);
    const whole =
      there &&
      (await verifyBackupFile(file).then(
        () => true,
        () => false,
      ));
    return {
      ended,
      wrong: there === whole && (!ended || there) ? [] : [`a backup cut after ${after_ms} ms left half a file`],
    };
  }

  /** `sparwright restore` killed while another shop comes in: the shop is not there, or whole. */
  async cutRestore(after_ms: number, lines: number): Promise<{ ended: boolean; wrong: string[] }> {
    const file = join(this.folder, 'brought.jsonl.gz');
    if (!existsSync(file)) await this.#withStore((s) => makeCopy(s, file, lines));
    const ended = (await this.#cutShort(after_ms, 'restore', file)) === 0;
    return this.#withStore(async (s) => {
      const last = (await s.shops.list()).find((x) => x.id === BROUGHT)?.last ?? 0;
      const wrong: string[] = last > 0 ? await s.log.verify(BROUGHT) : [];
      if (last !== 0 && last !== lines)
        wrong.push(`a restore cut after ${after_ms} ms left ${last} entries of ${lines}`);
      if (ended && last === 0) wrong.push('a restore that said it was done is not there');
      if (last > 0) await s.shops.drop(BROUGHT);
      return { ended, wrong };
    });
  }

  /** What is lost, torn or wrong, in sentences. */
  check(): Promise<string[]> {
    const acknowledged = this.sent.filter((s) => s.acknowledged);
    return this.#withStore(async (store) => {
      const wrong = (await store.check()).flatMap((s) => s.problems);
      const log = await store.log.read(SHOP);
      const count = new Map<string, number>();
      for (const e of log) {
        const b = e.body as { detail?: string; name?: string; by?: string; document?: { number?: string } };
        const kept = e.kind === 'usage_basis' ? b.name : undefined;
        const recorded = e.kind === 'teardown_work' ? b.by : undefined;
        const mark =
          kept ??
          recorded ??
          b.detail ??
          b.document?.number ??
          (e.subject.startsWith('aircraft:import-') ? e.subject.slice(9) : e.kind);
        count.set(mark, (count.get(mark) ?? 0) + 1);
      }
      const imports = [...count].filter(([m]) => m.startsWith('import-')).map(([, n]) => n);
      for (const [mark, n] of count) {
        const whole = /^(entries|record)-/.test(mark) ? BATCH : mark.startsWith('import-') ? Math.max(...imports) : n;
        if (n !== whole) wrong.push(`${mark} is torn: ${n} of ${whole}`);
      }
      for (const { work, mark } of acknowledged)
        if (['entries', 'import', 'adopt', 'keep', 'record'].includes(work) && !count.has(mark))
          wrong.push(`${mark} is lost`);
      const letters = acknowledged.filter((s) => s.work === 'letter').length;
      if ((count.get('letter') ?? 0) < letters) wrong.push(`${letters} letters, ${count.get('letter')} kept`);
      return wrong;
    });
  }

  stop(): void {
    this.#stopped = true;
  }

  async end(): Promise<void> {
    this.stop();
    if (this.#child?.exitCode === null) await this.#killServer();
    await this.#withStore(async () => {}); // the last one out stops the database
    rmSync(this.#program, { recursive: true, force: true });
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** A copy of an invented shop that is not in the store when the trial begins. */
async function makeCopy(s: Store, file: string, lines: number): Promise<void> {
  await s.shops.open({ id: BROUGHT, name: 'Brought', invented: true });
  const entries = Array.from({ length: lines }, (_, i) => ({
    ...entry(`brought-${i}`, i),
    day: '2020-01-01' as Day,
    schema: 'record/1',
  }));
  await s.log.append(BROUGHT, entries, 'trial', new Date().toISOString());
  await s.backup(file, { shops: [BROUGHT], program: 'trial', at: new Date().toISOString() });
  await s.shops.drop(BROUGHT);
}

/** A process of the database that serves the program, chosen by chance. */
function childOf(postmaster: number): number | null {
  const all = readdirSync('/proc').filter((name) => {
    if (!/^\d+$/.test(name)) return false;
    try {
      const stat = readFileSync(`/proc/${name}/stat`, 'utf8');
      const parent = Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1]);
      return parent === postmaster && /sparwright sparwright/.test(readFileSync(`/proc/${name}/cmdline`, 'utf8'));
    } catch {
      return false;
    }
  });
  return all.length === 0 ? null : Number(all[Math.floor(Math.random() * all.length)]);
}
