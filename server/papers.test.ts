import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PapersSheet, Sheet } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';
import { testStore } from '../store/testing/database.ts';
import { newEntries } from './entries.ts';
import { createServer } from './server.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let app: FastifyInstance;
beforeAll(async () => {
  test = await testStore();
  app = await createServer({ store: test.store, root: rootFolder(), today: () => '2026-11-25' });
  await test.store.shops.open({ id: 'own', name: 'Shop', invented: false });
  await app.inject({ method: 'POST', url: '/api/demo', payload: {}, headers });
});
afterAll(async () => {
  await app.close();
  await test.done();
});
const host = '127.0.0.1:4747';
const headers = { host, origin: `http://${host}` };
const get = (url: string) => app.inject({ method: 'GET', url, headers });
const post = (url: string, payload: object) => app.inject({ method: 'POST', url, payload, headers });
const AT = '/api/shops/demo/aircraft/aircraft%3A0447';
const papers = async (query = '') => (await get(`${AT}/papers${query}`)).json() as PapersSheet;
const words = (s: Sheet) => s.answer.map((x) => x.text).join('');

const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 1, 2, 3]);
function upload(bytes: Buffer, name: string, fields: Record<string, string> = {}) {
  const edge = 'edgeofparts';
  const all = { aircraft: 'aircraft:0447', title: 'Volume 3', page: '41', by: 'M. Orne', pages: '1', ...fields };
  const head = Object.entries(all).map(
    ([k, v]) => `--${edge}\r\ncontent-disposition: form-data; name="${k}"\r\n\r\n${v}\r\n`,
  );
  const file = `--${edge}\r\ncontent-disposition: form-data; name="file"; filename="${name}"\r\ncontent-type: application/octet-stream\r\n\r\n`;
  const payload = Buffer.concat([Buffer.from(head.join('') + file), bytes, Buffer.from(`\r\n--${edge}--\r\n`)]);
  return app.inject({
    method: 'POST',
    url: '/api/shops/demo/pages',
    payload,
    headers: { ...headers, 'content-type': `multipart/form-data; boundary=${edge}` },
  });
}

describe('pages of a paper book', () => {
  it('are kept once, a PDF page by page, and stand among the papers', async () => {
    const photo = (await upload(PNG, 'p41.png')).json();
    expect(photo).toMatchObject({ already: false, numbers: [expect.any(Number)] });
    expect((await upload(PNG, 'again.png')).json()).toMatchObject({ already: true, numbers: photo.numbers });
    const pdf = await upload(Buffer.from('%PDF-1.4 two pages'), 'book.pdf', { page: '42', pages: '2' });
    expect(pdf.json().numbers.length).toBe(2);
    const sheet = await papers();
    expect(sheet.pages.map((p) => [p.page, p.inFile, p.mediaType])).toEqual([
      ['41', 1, 'image/png'],
      ['42', 1, 'application/pdf'],
      ['43', 2, 'application/pdf'],
    ]);
    expect(await test.store.log.verify('demo')).toEqual([]);
  });
  it.each([
    ['a HEIC photograph', Buffer.from('\0\0\0\x18ftypheic'), /JPEG/],
    ['a Word file', Buffer.from('PK\x03\x04word'), /PDF/],
    ['a TIFF', Buffer.from('II*\0'), /JPEG or PNG/],
    ['text', Buffer.from('hello'), /Photograph the page/],
    ['an empty file', Buffer.alloc(0), /Photograph the page/],
  ])('%s is refused with what to do', async (_, bytes, remedy) => {
    const r = await upload(bytes, 'x');
    expect(r.statusCode).toBe(422);
    expect(r.json().code).toBe('papers.not-a-page');
    expect(r.json().remedy).toMatch(remedy);
  });
  it('more than 20 MB is refused with a sentence', async () => {
    const r = await upload(Buffer.concat([PNG, Buffer.alloc(21 * 1024 * 1024)]), 'large.png');
    expect(r.statusCode).toBe(413);
    expect(r.json().code).toBe('server.too-large');
  });
});

const typed = (day: string, flown: string, total: string, more: object = {}) => ({
  day,
  flown,
  total,
  use: 'private',
  ...more,
});
const page = (rows: object[], more: object = {}) => ({
  rows,
  paper: { title: 'Volume 3', page: '41', seen_by: 'M. Orne', seen_on: '2026-11-25' },
  evidence: 'copy',
  ...more,
});

describe('rows beside the scan', () => {
  it('are added up against what was brought forward; a slip is told in words and may be kept', async () => {
    const r = await post(`${AT}/papers/rows`, page([typed('1.4.2009', '2.7', '467.0'), typed('20', '1:30', '469.5')]));
    const read = r.json();
    expect(read.brought.replaceAll('\u202f', ' ')).toContain('464.3 h');
    expect(read.lines[0].slips).toEqual([]);
    expect(read.lines[1]).toMatchObject({
      day: '20 Apr 2009',
      slips: ['the book says 469.5, the rows add up to 468.5: 1.0 h less'],
    });
    expect(read.entries.length).toBe(4);
    expect(read.gaps.length).toBe(1);
  });
  it('a row that cannot be read gives no entries', async () => {
    const read = (await post(`${AT}/papers/rows`, page([typed('1.4.2009', 'x', '467.0')]))).json();
    expect(read.entries).toEqual([]);
    expect(read.lines[0].reason).toContain('no number');
  });
  it('a paper found for a gap: before and after, the gap closed as far as the rows reach, then written', async () => {
    const gap = (await papers()).gaps[0]!.entry;
    const rows = [
      typed('1.3.2009', '100', '', { day: '1.3.2009', flown: '0.5', total: '464.8' }),
      typed('31.8.2011', '1.0', ''),
    ];
    const read = (await post(`${AT}/papers/rows`, page(rows, { close: [{ entry: gap, how: 'whole' }] }))).json();
    const before = await post(`${AT}/entries/preview`, { entries: read.entries });
    expect(before.statusCode).toBe(200);
    expect(JSON.stringify(before.json().blocks)).toContain('closed');
    expect(before.json().because).toContain('nothing of this is written yet');
    const last = (await papers()).last;
    expect((await post('/api/shops/demo/entries', { entries: read.entries, expect_last: last })).statusCode).toBe(200);
    const after = await papers();
    expect(after.gaps).toEqual([]);
    const struck = after.rows.find((x) => x.number === gap)!;
    expect(struck.replacedBy?.words).toContain('stands in its place');
    expect(struck.correctable).toBe(false);
    expect(after.rows.find((x) => x.kind === 'flights')).toMatchObject({
      paper: 'Volume 3',
      page: '41',
      seen: 'M. Orne, 25 Nov 2026',
    });
  });
});

describe('two tabs correct one entry', () => {
  it('the second is refused, sees what the first did, and corrects the correction', async () => {
    const sheet = await papers();
    const row = sheet.rows.find((r) => r.kind === 'reading' && r.correctable)!;
    const correcting = (total_h: number, replaces: number) => [
      {
        id: 'c',
        subject: row.subject,
        kind: 'reading',
        day: row.day,
        order: 9,
        evidence: 'copy',
        body: { total_h },
        replaces: String(replaces),
      },
    ];
    const first = await post('/api/shops/demo/entries', {
      entries: correcting(2300.5, row.number),
      expect_last: sheet.last,
    });
    const n = first.json().numbers[0];
    expect(
      (
        await post('/api/shops/demo/entries', { entries: correcting(2301.5, row.number), expect_last: sheet.last })
      ).json().code,
    ).toBe('store.changed-meanwhile');
    const preview = await post(`${AT}/entries/preview`, { entries: correcting(2301.5, row.number) });
    expect(preview.json()).toMatchObject({
      code: 'store.entry-replaced',
      given: expect.stringContaining(`entry ${n}`),
    });
    const seen = (await papers()).rows.find((r) => r.number === row.number)!;
    expect(seen.replacedBy).toMatchObject({ number: n, words: expect.stringContaining('2300.5') });
    expect((await post('/api/shops/demo/entries', { entries: correcting(2301.5, n) })).statusCode).toBe(200);
  });
  it('an entry of the wrong aircraft is struck through here, with where it stands now', async () => {
    const [wrong] = await test.store.log.append(
      'demo',
      newEntries([
        {
          id: 'x',
          subject: 'aircraft:0447',
          kind: 'event',
          day: '2026-05-01',
          evidence: 'seen',
          body: { event: 'hard_landing' },
        },
      ]),
      'desk',
      '2026-11-25T10:00:00.000Z',
    );
    const moved = {
      id: 'm',
      subject: 'aircraft:0702',
      kind: 'event',
      day: '2026-05-01',
      evidence: 'seen',
      body: { event: 'hard_landing' },
      replaces: String(wrong),
    };
    expect((await post(`${AT}/entries/preview`, { entries: [moved] })).statusCode).toBe(200);
    await post('/api/shops/demo/entries', { entries: [moved] });
    const row = (await papers()).rows.find((r) => r.number === wrong)!;
    expect(row.replacedBy?.words).toContain('aircraft:0702');
  });
});

describe('as known on a day', () => {
  const at = (query: string) => get(`/api/shops/own/aircraft/aircraft%3A1?${query}`);
  const put = (kind: string, day: string, body: object, when: string) =>
    test.store.log.append(
      'own',
      newEntries([{ id: 'x', subject: 'aircraft:1', kind, day, evidence: 'copy', body }]),
      'M. Orne',
      `${when}T10:00:00.000Z`,
    );
  beforeAll(async () => {
    await put(
      'aircraft',
      '2005-03-01',
      { registration: 'ZQ-AAA', type: 'Whimbrel', model: 'W4', serial: '1', built: '2005-03-01' },
      '2026-03-01',
    );
    await put('reading', '2026-02-01', { total_h: 1000, landings: 900 }, '2026-03-01');
    await put('reading', '2026-03-01', { total_h: 1010, landings: 910 }, '2026-04-01');
  });
  it('shows the old figures, its entry number in words, and what came later', async () => {
    const sheet = (await at('known_on=2026-03-03')).json() as Sheet;
    expect(sheet.titleBlock.fields[1]).toEqual({ label: 'As known on 3 Mar 2026', value: 'entries up to 2' });
    expect(sheet.day).toBe('2026-03-03');
    expect(JSON.stringify(sheet.titleBlock)).toContain('000.0 h');
    expect(JSON.stringify(sheet.blocks.at(-1))).toContain('1010');
    expect(JSON.stringify((await at('')).json().titleBlock)).toContain('010.0 h');
    expect(((await at('known=2&day=2026-11-25')).json() as Sheet).day).toBe('2026-11-25');
    const then = (await get('/api/shops/own/aircraft/aircraft%3A1/papers?known_on=2026-03-03')).json() as PapersSheet;
    expect(then.rows.map((r) => r.number)).toEqual([2, 1]);
  });
  it.each(['known_on=2026-02-01', 'known=99', 'known=0', 'known=x'])('%s: a sentence', async (query) => {
    const r = await at(query);
    expect(r.json()).toMatchObject({ code: 'papers.not-known-then' });
    expect(r.json().given.length).toBeGreaterThan(15);
  });
  it('before the aircraft itself was recorded: a sentence', async () => {
    await put(
      'aircraft',
      '2010-01-01',
      { registration: 'ZQ-BBB', type: 'W', model: 'W', serial: '2', built: '2010-01-01' },
      '2026-05-01',
    );
    await test.store.log.append(
      'own',
      newEntries([
        {
          id: 'x',
          subject: 'aircraft:2',
          kind: 'aircraft',
          day: '2010-01-01',
          evidence: 'copy',
          body: { registration: 'ZQ-CCC', type: 'W', model: 'W', serial: '3', built: '2010-01-01' },
        },
      ]),
      'M. Orne',
      '2026-06-01T10:00:00.000Z',
    );
    expect((await get('/api/shops/own/aircraft/aircraft%3A2?known_on=2026-05-03')).json().code).toBe(
      'papers.not-known-then',
    );
  });
  it('a letter of that time stands with what it printed; another program that computes otherwise is said in words', async () => {
    const kept = await post('/api/shops/demo/letters', { aircraft: 'aircraft:0612', directive: 'W-14' });
    expect(kept.statusCode).toBe(200);
    const last = await test.store.log.last('demo');
    const [letter] = await test.store.log.read('demo', { kinds: ['letter'] });
    const sheet = async () =>
      (
        await get(`/api/shops/demo/aircraft/aircraft%3A0612?known=${await test.store.log.last('demo')}`)
      ).json() as Sheet;
    const plain = await sheet();
    expect(plain.blocks.some((b) => b.title.startsWith('Letters kept'))).toBe(true);
    expect(plain.warnings.join(' ')).not.toContain('computes from the same papers');
    const body = letter!.body as { answers: { treatAs: { standing: string }; standing: { worst: string } }[] };
    const other = {
      ...body,
      number: 'L-old',
      program: '0.0.1',
      answers: body.answers.map((a) => ({ ...a, standing: { worst: 'ended', best: 'ended' } })),
    };
    await test.store.log.append(
      'demo',
      [{ ...letter!, body: other, replaces: undefined }].map(({ number: _, hash: __, ...e }) => e),
      'desk',
      '2026-11-25T10:00:00.000Z',
    );
    const text = (await sheet()).warnings.join(' ');
    expect(text).toContain('Letter L-old (program version 0.0.1) printed');
    expect(text).toContain('computes from the same papers');
    expect(last).toBeGreaterThan(0);
  });
});
it('the answer of the papers names entries, papers and pages', async () => {
  expect(words(await papers())).toMatch(/ZQ-HRN: .*entries from .*papers, .*pages of them kept here/);
});
