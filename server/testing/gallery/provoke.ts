import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import { evaluate } from '../../../engine/directive/expression/evaluate.ts';
import { directive, isRefusal, parseDay } from '../../../engine/index.ts';
import { entriesFrom, preview, readGrid, suggestMapping } from '../../../intake/index.ts';
import { rootFolder } from '../../../store/index.ts';
import { WORDS } from '../../words.ts';
import { formula } from './formula.ts';
import type { Provoking } from './read.ts';
import type { Said } from './said.ts';
import { STEPS, type Stage } from './steps.ts';

const NOTHING: Said = { code: 'no refusal', given: '', allowed: '', remedy: '' };

async function bytesOf(f: NonNullable<Provoking['file']>): Promise<Uint8Array> {
  if (f.base64 !== undefined) return Buffer.from(f.base64, 'base64');
  if (f.rows === undefined) return Buffer.from((f.text ?? '').repeat(f.times ?? 1));
  const book = new ExcelJS.Workbook();
  book.addWorksheet('Log').addRows(f.rows as unknown[][]);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

async function take({ file, take: how }: Provoking): Promise<void> {
  const grid = await readGrid(await bytesOf(file!), file!.name, file!.sheet);
  if (!how) return;
  const mapping = { ...suggestMapping(grid), ...(how.columns ? { columns: how.columns } : {}) };
  const context = {
    subject: 'aircraft:1',
    title: file!.name,
    evidence: 'copy' as const,
    today: parseDay(how.today ?? '2026-01-15'),
    existing: [],
  };
  preview(grid, mapping, context);
  entriesFrom(grid, mapping, context);
}

async function asked(r: NonNullable<Provoking['request']>, { app }: Stage): Promise<Said> {
  const host = '127.0.0.1:4747';
  const sent = r.text !== undefined || r.body !== undefined;
  const answer = await app.inject({
    method: r.method,
    url: r.url,
    headers: { host, origin: `http://${host}`, ...(sent ? { 'content-type': 'application/json' } : {}), ...r.headers },
    ...(r.text !== undefined ? { payload: r.text } : r.body !== undefined ? { payload: JSON.stringify(r.body) } : {}),
  });
  return answer.statusCode >= 400 ? answer.json<Said>() : NOTHING;
}

/** What a command printed: three lines, and the code of the file that was given to it. */
function commanded(args: readonly string[], code: string): Said {
  const program = join(rootFolder(), 'scripts', 'sparwright.mjs');
  const r = spawnSync(process.execPath, [program, ...args], { encoding: 'utf8', cwd: rootFolder() });
  const line = (name: string) => new RegExp(`^${name}: +(.*)$`, 'm').exec(r.stderr)?.[1] ?? '';
  if (r.status !== 2) return NOTHING;
  return { code, given: line('Given'), allowed: line('Allowed'), remedy: line('Do') };
}

async function done(p: Provoking, stage: Stage): Promise<Said> {
  if (p.record !== undefined) WORDS.record.answer(p.record);
  else if (p.outlook !== undefined) WORDS.outlook.answer(p.outlook);
  else if (p.usage !== undefined) WORDS.usage.answer(p.usage);
  else if (p.growth !== undefined) WORDS.growth.answer(p.growth);
  else if (p.structure !== undefined) WORDS.structure.answer(p.structure);
  else if (p.floor !== undefined) WORDS.floor.answer(p.floor);
  else if (p.teardown !== undefined) WORDS.teardown.answer(p.teardown);
  else if (p.adopt) {
    const body = { text: JSON.stringify(p.directive), by: 'A. Reader', on: '2026-01-15' };
    return asked({ method: 'POST', url: '/api/shops/demo/directives', body }, stage);
  } else if (p.directive !== undefined) WORDS.directive.answer(directive.readDirective(p.directive));
  else if (p.formula !== undefined) evaluate(formula(p.formula), p.facts ?? {});
  else if (p.file) await take(p);
  else if (p.request) return asked(p.request, stage);
  else if (p.command) return commanded(p.command, p.code);
  else if (p.step && STEPS[p.step]) return (await STEPS[p.step]!(stage)) ?? NOTHING;
  else throw new Error(`${p.code}: no way to do it is written in its file`);
  return NOTHING;
}

/** Does what the file says and hands back what the program said. */
export async function provoke(p: Provoking, stage: Stage): Promise<Said> {
  try {
    return await done(p, stage);
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return { code: e.code, ...e.detail };
  }
}
