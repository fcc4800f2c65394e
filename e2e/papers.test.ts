import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import PDFDocument from 'pdfkit';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessible as allAccessible } from './checks.ts';
import { openBrowser, Program } from './program.ts';

const pictures = join(process.cwd(), '.sparwright', 'pictures');
const program = new Program();
let browser: Browser;
let context: BrowserContext;
let page: Page;
const said: string[] = [];
const at = () => `${program.url}/demo/aircraft/aircraft%3A0447/papers`;

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  await program.start();
  browser = await openBrowser();
  context = await browser.newContext({ viewport: { width: 1360, height: 900 } });
  page = await context.newPage();
  page.on('console', (m) => m.type() === 'error' && said.push(m.text()));
  page.on('pageerror', (e) => said.push(e.message));
  await page.request.post(`${program.url}/api/demo`, { headers: { origin: program.url } });
  await page.goto(at());
  await ready();
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

const ready = (on = page) => on.getByRole('heading', { name: 'Papers', exact: true }).waitFor();
const plain = async (what: string) => (await page.locator(what).allInnerTexts()).join('\n').replaceAll('\u202f', ' ');
const accessible = (part?: string) => allAccessible(page, part);
function twoPages(): Promise<Buffer> {
  const pdf = new PDFDocument();
  const chunks: Buffer[] = [];
  pdf.on('data', (c: Buffer) => chunks.push(c));
  pdf.text('Volume 3, page 42').addPage().text('Volume 3, page 43').end();
  return new Promise((done) => pdf.on('end', () => done(Buffer.concat(chunks))));
}
/** A photograph of a page, drawn by the browser itself. */
const photograph = async (type: string): Promise<Buffer> => {
  const url = await page.evaluate((t) => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [600, 800];
    const pen = canvas.getContext('2d')!;
    pen.fillStyle = '#f8f4e8';
    pen.fillRect(0, 0, 600, 800);
    pen.fillStyle = '#223';
    pen.fillText('Volume 3, page 41', 40, 60);
    return canvas.toDataURL(t);
  }, type);
  return Buffer.from(url.split(',')[1]!, 'base64');
};
const keep = (name: string, mimeType: string, buffer: Buffer) =>
  page.locator('input[type=file]').first().setInputFiles({ name, mimeType, buffer });

describe('beside the scan', () => {
  it('keeps a photograph and a PDF of two pages, turned and enlarged by keys', async () => {
    await page.locator('input[name=book]').fill('Logbook ZQ-HRN, volume 3');
    await page.locator('input[name=book-page]').fill('41');
    await page.locator('input[name=book-by]').fill('M. Orne');
    await keep('p41.jpg', 'image/jpeg', await photograph('image/jpeg'));
    await page.getByText('1 page is kept.').waitFor();
    await keep('v3.pdf', 'application/pdf', await twoPages());
    await page.getByText('2 pages are kept.').waitFor({ timeout: 30_000 });
    await page.locator('canvas[aria-label*="page 42"]').waitFor();
    await page.waitForFunction(
      () => (document.querySelector('.scan canvas') as HTMLCanvasElement | null)?.width === 1800,
    );
    await page.locator('.scan').focus();
    for (const key of ['+', '+', 'r', 'ArrowLeft']) await page.keyboard.press(key);
    const turned = () => page.locator('.scan-paper').evaluate((e) => (e as HTMLElement).style.transform);
    await expect.poll(turned).toMatch(/rotate\(90deg\)/);
    await expect.poll(turned).toMatch(/scale\(1\.5625\)/);
    await accessible();
  });
  it('refuses a HEIC photograph with what to do', async () => {
    await keep('p.heic', 'image/heic', Buffer.from('\0\0\0\x18ftypheic'));
    await page.getByText(/Set the camera of the telephone to JPEG/).waitFor();
  });

  it('ten rows by keyboard alone: a new row appears, the day carries over, a slip is told at its row', async () => {
    await page.locator('[data-cell="0 0"]').focus();
    const rows = [
      ['1.4.2009', '0.5', '464.8', '1', '613', 'private', ''],
      ['', '1:30', '466.3', '2', '615', 'tow', ''],
      ['14', '1,0', '467.3', '1', '616', 'tow', 'Hard landing'],
      ['2.5.', '1.0', '469.3', '1', '617', 'private', ''],
      ['3', '0.7', '470.0', '1', '618', 'private', ''],
      ['4', '1.0', '', '1', '', 'private', ''],
      ['5', '1.0', '472.0', '1', '620', 'private', ''],
      ['6', '2.0', '474.0', '2', '622', 'tow', ''],
      ['7', '1.0', '475.0', '1', '623', 'tow', ''],
      ['30.8.2011', '0.3', '810.3', '1', '1511', 'private', ''],
    ];
    for (const cell of rows.flat()) {
      if (cell) await page.keyboard.type(cell);
      await page.keyboard.press('Enter');
    }
    await page.getByText('adds up to 475.0 h').waitFor();
    await expect.poll(() => page.locator('.typed-rows tbody th').count()).toBe(11);
    // The slip, and both totals of the last row, which is read last.
    await expect.poll(async () => (await plain('.typed-rows')).match(/the rows add up to/g)?.length).toBe(3);
    const told = await plain('.typed-rows');
    expect(told).toContain('1 Apr 2009, adds up to 466.3 h and 615 landings');
    expect(told).toContain('the book says 469.3, the rows add up to 468.3: 1.0 h less');
    await page.screenshot({ path: join(pictures, 'papers-rows.png') });
  });
  it('loses nothing on a reload', async () => {
    await page.reload();
    await ready();
    expect(await page.locator('[data-cell="9 0"]').inputValue()).toBe('30.8.2011');
    expect(await page.locator('input[name=book]').inputValue()).toBe('Logbook ZQ-HRN, volume 3');
  });
  it('shows before and after, the gap closed, then writes all of it', async () => {
    const gap = page.locator('select[name^=close]');
    await gap.waitFor();
    await gap.selectOption('whole');
    await page.getByRole('button', { name: 'Show before and after' }).click();
    const write = page.getByRole('button', { name: /Write these \d+ entries/ });
    await write.waitFor({ timeout: 30_000 });
    const shown = await plain('.before-after');
    expect(shown).toContain('Stretches without paper');
    expect(shown).toContain('closed');
    expect(shown).toContain('nothing of this is written yet');
    await accessible('.before-after');
    await page.screenshot({ path: join(pictures, 'papers-before-after.png'), fullPage: true });
    await write.click();
    await page.getByText(/^Written: \d+ entries/).waitFor({ timeout: 30_000 });
    await expect.poll(() => page.locator('[data-cell="0 0"]').inputValue()).toBe('');
    await page.getByText('Hard landing').first().waitFor();
  });
});

describe('two tabs correct one entry', () => {
  it('the second sees what the first did, loses nothing, and corrects the correction', async () => {
    const second = await context.newPage();
    await second.goto(at());
    await ready(second);
    await ready();
    const open = async (on: Page, shows: string) => {
      await on.locator('input[name=search]').fill('reading 469.3');
      await on
        .locator('table.papers')
        .getByRole('button', { name: /^correct/ })
        .first()
        .click();
      await on.locator('.correct input[name=total_h]').fill(shows);
      await on.locator('.correct').getByRole('button', { name: 'Show before and after' }).click();
      await on.locator('.correct').getByRole('button', { name: 'Write this entry' }).waitFor({ timeout: 30_000 });
    };
    await open(page, '468.3');
    await open(second, '468.4');
    await page.locator('.correct').getByRole('button', { name: 'Write this entry' }).click();
    await page
      .getByText(/stands in place of entry/i)
      .first()
      .waitFor({ timeout: 30_000 });
    await second.locator('.correct').getByRole('button', { name: 'Write this entry' }).click();
    await second.getByText(/was corrected in the meantime. What you typed stands below/).waitFor({ timeout: 30_000 });
    await second
      .getByText(/stands in its place: .*468\.3/)
      .first()
      .waitFor();
    expect(await second.locator('.correct input[name=total_h]').inputValue()).toBe('468.4');
    await second.getByRole('button', { name: /Correct entry \d+ with what I typed/ }).click();
    await second.locator('.correct').getByRole('button', { name: 'Show before and after' }).click();
    await second.locator('.correct').getByRole('button', { name: 'Write this entry' }).click({ timeout: 30_000 });
    await second.getByText(/^Written: entry \d+ stands in place/).waitFor({ timeout: 30_000 });
    await second.close();
  });
});

describe('as known on', () => {
  it('an entry of then: the old figures, in words; a day before the first entry: a sentence', async () => {
    const all = (await (
      await page.request.get(`${program.url}/api/shops/demo/aircraft/aircraft%3A0447/papers`)
    ).json()) as {
      rows: { number: number; kind: string }[];
    };
    const first = Math.min(...all.rows.filter((r) => r.kind === 'page').map((r) => r.number));
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A0447?known=${first - 1}`);
    await page
      .getByText(new RegExp(`entries up to ${first - 1}`))
      .first()
      .waitFor();
    await page.getByRole('heading', { name: 'Came later, and is not counted here' }).waitFor();
    expect(await plain('main')).toContain('Papers of 2009 to 2011');
    await accessible();
    await page.getByLabel('As known on').last().fill('2020-01-01');
    await page.getByRole('button', { name: 'Show it as it was then' }).click();
    await page.getByText(/this shop knew nothing/).waitFor();
    await page.getByRole('button', { name: 'Back to what is known now' }).click();
    await page.getByRole('heading', { level: 1 }).first().waitFor();
  });
  it('fits a tablet', async () => {
    await page.setViewportSize({ width: 820, height: 1180 });
    await page.goto(at());
    await ready();
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    await page.screenshot({ path: join(pictures, 'tablet-papers.png'), fullPage: true });
  });
  it('no page said an error', () => {
    expect(said.filter((s) => !/status of 4\d\d/.test(s))).toEqual([]);
  });
});
