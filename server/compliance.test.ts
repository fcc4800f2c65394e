import { spawnSync } from 'node:child_process';
import { parse } from 'csv-parse/sync';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Cell, Sheet, TableBlock } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { createServer } from './server.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
const host = '127.0.0.1:4747';
const get = (url: string) => app.inject({ method: 'GET', url: `/api/shops/demo/${url}`, headers: { host } });
const post = (url: string, payload: object) =>
  app.inject({ method: 'POST', url, payload, headers: { host, origin: `http://${host}` } });
const sheet = async (url: string): Promise<Sheet> => (await get(url)).json();
const table = (s: Sheet, title: RegExp): TableBlock =>
  s.blocks.find((b): b is TableBlock => b.block === 'table' && title.test(b.title))!;
const words = (c: Cell | undefined) => (c && 'text' in c ? [c.text, 'small' in c ? c.small : ''].join(' ').trim() : '');
const lineOf = (s: Sheet, part: RegExp, title = /crack check/) =>
  table(s, /^In force/).rows.find((r) => part.test(words(r.cells.part)) && title.test(words(r.cells.action)))!;
const said = (s: Sheet) => s.answer.map((x) => x.text).join('');
const write = (entries: object[], more: object = {}) => post('/api/shops/demo/entries', { entries, ...more });
const JAY = 'aircraft/aircraft%3A0433/compliance';

beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today: () => '2026-11-25' });
  await post('/api/demo', {});
});
afterAll(async () => {
  await app.close();
  await test.done();
});

describe('the compliance list', () => {
  it('changes at once for the side that an accomplishment is recorded on, and for no other', async () => {
    const before = await sheet(JAY);
    expect(words(lineOf(before, /Left/).cells.method)).toBe('not on record');
    const done = {
      id: 'x',
      subject: 'spar:0433-L',
      kind: 'accomplished',
      day: '2026-11-24',
      evidence: 'seen',
      paper: { title: 'Work order 77', page: '2', row: 5 },
      body: {
        directive: 'W-14',
        issue: 2,
        action: 'first_look',
        finding: 'none',
        method: 'eddy current',
        total_h: 1513.2,
        landings: 6261,
        signer: { name: 'M. Orne', certificate: 'ZQ-M-114' },
      },
    };
    expect((await write([done])).statusCode).toBe(200);
    const after = await sheet(JAY);
    const left = lineOf(after, /Left/).cells;
    expect(words(left.standing)).toMatch(/^done and repeating/);
    expect(words(left.done)).toBe('24 Nov 2026 Work order 77, page 2, line 5');
    expect(words(left.at).replaceAll('\u202f', ' ')).toBe('1 513.2 h, 6 261 landings as written');
    expect(words(left.signer)).toBe('M. Orne ZQ-M-114');
    expect(words(left.date)).toBe('24 Nov 2031');
    const { working: _, ...right } = lineOf(after, /Right/);
    const { working: __, ...was } = lineOf(before, /Right/);
    expect(right).toEqual(was);
  });
  it('catches one line typed for both sides: the side it does not name stays open', async () => {
    const pem = await sheet('aircraft/aircraft%3A0588/compliance');
    expect(words(lineOf(pem, /Right/).cells.standing)).toBe('treat as overdue could become done and repeating');
    expect(words(lineOf(pem, /Right/).cells.done)).toContain('not proven: its paper names the left side only');
    expect(JSON.stringify(pem.blocks)).toContain('directive.paper-names-other-side');
    const others = await sheet('aircraft/aircraft%3A0530/compliance');
    expect(JSON.stringify(others.blocks)).not.toContain('directive.paper-names-other-side');
  });
  it('says who checked the authority’s list and when, and warns where that is long ago or never', async () => {
    const [fresh, late, never] = await Promise.all(
      ['0612', '0433', '0530'].map((id) => sheet(`aircraft/aircraft%3A${id}/compliance`)),
    );
    expect(fresh!.because).toContain('last checked 20 Nov 2026 by M. Orne');
    expect(late!.warnings.join()).toContain('longer ago than the 90 days');
    expect(never!.warnings.join()).toContain('No check of the authority’s list is recorded');
    const list_checked = { authority: 'Air Safety Board', by: 'M. Orne' };
    await write([
      {
        id: 'l',
        subject: 'aircraft:0530',
        kind: 'list_checked',
        day: '2026-11-25',
        evidence: 'seen',
        body: list_checked,
      },
    ]);
    expect((await sheet('aircraft/aircraft%3A0530/compliance')).because).toContain('25 Nov 2026');
  });
  it('as known at an earlier entry lacks what came later', async () => {
    const then = await sheet(`${JAY}?known=${(await test.store.log.last('demo')) - 2}&day=2026-11-25`);
    expect(words(lineOf(then, /Left/).cells.method)).toBe('not on record');
    expect(then.number).toBe(`entry ${(await test.store.log.last('demo')) - 2}`);
  });
  it('as CSV has one thing per column, and as XLSX is a workbook', async () => {
    const r = await get(`${JAY}?format=csv`);
    expect(r.headers['content-disposition']).toContain('compliance-ZQ-JAY-2026-11-25.csv');
    const rows: string[][] = parse(r.body, { bom: true, relax_column_count: true, skip_empty_lines: false });
    const head = rows.find((x) => x.includes('Directive') && x.includes('Issue'))!;
    const left = rows.find((x) => x[head.indexOf('Side')] === 'left' && x[head.indexOf('Directive')] === 'W-14')!;
    const at = (title: string) => left[head.indexOf(title)];
    expect([at('Issued'), at('Done on'), at('Reading then, h'), at('Signed by'), at('Signed by, note')]).toEqual([
      '2024-03-03',
      '2026-11-24',
      '1513.2',
      'M. Orne',
      'ZQ-M-114',
    ]);
    expect((await get(`${JAY}?format=xlsx`)).rawPayload.subarray(0, 2).toString()).toBe('PK');
    expect((await get(`${JAY}?format=doc`)).json()).toMatchObject({ code: 'foundation.document-invalid' });
  });
  const found = spawnSync('pdftotext', ['-v']).error === undefined;
  it.skipIf(!found)('on paper has a place to sign, the entry it is known to, and the caution once', async () => {
    const r = await get(`${JAY}?format=pdf`);
    const text = spawnSync('pdftotext', ['-layout', '-', '-'], { input: r.rawPayload }).stdout.toString();
    const plain = text.replaceAll(/\s+/g, ' ');
    for (const piece of ['Compliance list, ZQ-JAY', 'Signature', 'Certificate', 'Known to', 'ZQ-M-114', 'FP-118'])
      expect(plain).toContain(piece);
    expect(plain).toMatch(/entry \d+/);
    expect(plain.match(/approve nothing/g)).toHaveLength(1);
  });
});

describe('ferry permits', () => {
  it('stand in one line on the aircraft, the list and the letter, and change no standing', async () => {
    const line =
      /ferry permit, FP-118 of .*, holds until 11 Dec 2026 under these conditions: .*; it changes no standing\./i;
    const [aircraft, list, letter] = await Promise.all(
      ['aircraft/aircraft%3A0433', JAY, 'letters/preview?aircraft=aircraft%3A0433&directive=W-14'].map(sheet),
    );
    expect(aircraft!.warnings.join('\n')).toMatch(line);
    expect(list!.warnings.join('\n')).toMatch(line);
    expect(JSON.stringify(letter!.blocks)).toMatch(line);
    expect(words(lineOf(list!, /Right/).cells.standing)).toMatch(/^overdue/);
    const later = await sheet(`${JAY}?day=2026-12-12`);
    expect(later.warnings.join()).toContain(
      'Ferry permit FP-118 of Air Safety Board (invented) expired on 11 Dec 2026.',
    );
  });
});

describe('approvals of the shop', () => {
  it('lists every reference with its conditions, subjects and state', async () => {
    const s = await sheet('fleet/approvals');
    const rows = table(s, /On record/).rows.map((r) => Object.values(r.cells).map(words).join(' | '));
    expect(rows.find((r) => r.startsWith('AM-7'))).toContain('ZQ-FEN, ZQ-GUL');
    expect(rows.find((r) => r.startsWith('AM-12'))).toContain('ZQ-GUL, right walkway doubler');
    expect(rows.find((r) => r.startsWith('AM-3'))).toContain('Corrosion was found');
    expect(rows.find((r) => r.startsWith('FP-118'))).toContain('changes no standing');
    const { references } = (await get('fleet/approvals/choices')).json() as { references: string[] };
    expect(references.sort()).toEqual(['AM-12', 'AM-7', 'FP-118']);
  });
  it('says whom a revocation would hit, stores nothing, and revoked they stand so', async () => {
    const last = await test.store.log.last('demo');
    const would = await sheet('fleet/approvals/revoking?reference=AM-7');
    expect(said(would)).toBe('Revoking AM-7 would hit 2 aircraft: ZQ-FEN, ZQ-GUL.');
    expect(table(would, /hit/).rows).toHaveLength(4);
    for (const r of table(would, /hit/).rows) {
      expect(words(r.cells.now)).toBe('ended');
      expect(words(r.cells.would)).toBe('not yet due');
    }
    expect(await test.store.log.last('demo')).toBe(last);
    const fen = 'aircraft/aircraft%3A0499/compliance';
    expect(words(lineOf(await sheet(fen), /Left/).cells.standing)).toBe('ended approved alternative AM-7');
    const revocation = {
      id: 'r',
      subject: 'shop',
      kind: 'revocation',
      day: '2026-11-25',
      evidence: 'statement',
      body: { reference: 'AM-7', because: 'A strap broke' },
    };
    expect((await write([revocation], { expect_last: last - 1 })).json()).toMatchObject({
      code: 'store.changed-meanwhile',
    });
    await write([revocation], { expect_last: last });
    expect(words(lineOf(await sheet(fen), /Left/).cells.standing)).toBe('not yet due');
    expect((await get('fleet/approvals/revoking?reference=AM-7')).json()).toMatchObject({
      code: 'approvals.reference-unknown',
    });
  });
  it('a permit or an expired approval hits nobody', async () => {
    const s = await sheet('fleet/approvals/revoking?reference=FP-118');
    expect(said(s)).toContain('would change no standing today');
    expect(s.because).toContain('ZQ-JAY');
  });
});
