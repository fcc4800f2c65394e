import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { W14_2 } from '../examples/scenario/directives.ts';
import { accessible as allAccessible, fits as allFits, DESKTOP, TABLET } from './checks.ts';
import { openBrowser, Program } from './program.ts';

const pictures = join(process.cwd(), '.sparwright', 'pictures');

const program = new Program();
let browser: Browser;
let context: BrowserContext;
let page: Page;
const said: string[] = [];

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  await program.start();
  browser = await openBrowser();
  context = await browser.newContext({ viewport: DESKTOP, acceptDownloads: true });
  page = await context.newPage();
  page.on('console', (m) => m.type() === 'error' && said.push(m.text()));
  page.on('pageerror', (e) => said.push(e.message));
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

const shot = (name: string, on = page) => on.screenshot({ path: join(pictures, `${name}.png`), fullPage: true });
const settled = () => page.getByRole('main').getByRole('heading', { level: 1 }).first().waitFor();
const accessible = () => allAccessible(page);
const fits = () => allFits(page);

describe('a newcomer looks round the invented scenario', () => {
  it('opens the demo from the start page by keyboard alone', async () => {
    await page.goto(program.url);
    await settled();
    await accessible();
    await shot('start');
    const demo = page.getByRole('button', { name: 'Open the demo' });
    for (let i = 0; i < 40 && !(await demo.evaluate((e) => e === document.activeElement)); i++)
      await page.keyboard.press('Tab');
    expect(await demo.evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/demo\/fleet$/);
    await page
      .getByRole('link', { name: /ZQ-LMB/ })
      .first()
      .waitFor();
    expect(await page.getByText(/invented/i).count()).toBeGreaterThan(0);
    await accessible();
    await shot('list');
  });

  it('reads the answer of one aircraft, opens the working down to the entries', async () => {
    await page
      .getByRole('link', { name: /ZQ-LMB/ })
      .first()
      .click();
    await page
      .getByText(/left inboard spar .* bites first/)
      .first()
      .waitFor();
    await accessible();
    await fits();
    await shot('aircraft');
    await page.getByRole('button', { name: /why/i }).first().click();
    await page
      .getByText(/paragraph 4/)
      .first()
      .waitFor();
    expect(await page.getByText('landings.total').count()).toBeGreaterThan(0);
  });

  it('keeps every page within a tablet', async () => {
    await page.setViewportSize(TABLET);
    for (const path of [
      '',
      'demo/fleet',
      'demo/aircraft/aircraft%3A0612',
      'demo/directive',
      'demo/directive/W-14',
      'demo/import',
      'demo/import/caller',
    ]) {
      await page.goto(`${program.url}/${path}`);
      await settled();
      await page.waitForLoadState('networkidle');
      await fits();
      await shot(`tablet-${path.replaceAll(/[^a-z0-9]+/gi, '-') || 'start'}`);
    }
    await page.setViewportSize(DESKTOP);
  });

  it('reads a directive back, with its cases', async () => {
    await page.goto(`${program.url}/demo/directive/W-14`);
    await page.getByText('over both').first().waitFor();
    await accessible();
    await shot('directive');
  });

  it('keeps the letter as a PDF', async () => {
    await page.goto(`${program.url}/demo/letter/aircraft%3A0612/W-14`);
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    await page.getByRole('button', { name: 'Keep and print' }).click();
    const link = page.getByRole('link', { name: 'the letter as PDF' });
    await link.waitFor();
    const answer = await page.request.get(new URL((await link.getAttribute('href'))!, program.url).href);
    expect(answer.headers()['content-type']).toBe('application/pdf');
    const pdf = await answer.body();
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    writeFileSync(join(pictures, 'letter.pdf'), pdf);
    await shot('letter');
  });
});

describe('a stranger with a spreadsheet that nobody here has seen', () => {
  const rows = Array.from({ length: 40 }, (_, i) => {
    const d = new Date(Date.UTC(2016 + Math.floor(i / 4), (i % 4) * 3, 13));
    const date = `${String(d.getUTCDate()).padStart(2, '0')}/${String(d.getUTCMonth() + 1).padStart(2, '0')}/${d.getUTCFullYear()}`;
    return `Glider tow,${7000 + i * 40},${date},"${(1200 + i * 12.5).toFixed(1)}",quarter ${(i % 4) + 1}`;
  });
  const csv = ['Kind of flying,Ldg total,Date,Airframe hours,Remarks', ...rows].join('\n');

  it('maps the columns, sees every row, writes them', async () => {
    await page.goto(`${program.url}/own/import`);
    await settled();
    await accessible();
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'tug.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
    await page.getByText('tug.csv is read.').waitFor();
    await shot('import-mapping');
    for (const [label, value] of Object.entries({
      Registration: 'ZQ-NEW',
      Type: 'Whimbrel',
      Model: 'W4-T',
      Serial: '0800',
      Built: '2008-05-01',
    }))
      await page.getByLabel(label, { exact: false }).last().fill(value);
    const order = page.getByLabel('In its dates');
    if ((await order.inputValue()) === 'to_be_chosen') await order.selectOption('day_first');
    const use = page.locator('select[name^="use."]').first();
    if (await use.count()) await use.selectOption('tow');
    await page.getByRole('button', { name: 'Show every row' }).click();
    await page.getByRole('heading', { name: /40 rows accepted, 0 refused/ }).waitFor();
    await accessible();
    await shot('import-preview');
    await page.getByRole('button', { name: 'Write the accepted rows to the log' }).click();
    await page.waitForURL(/\/own\/aircraft\//);
    await settled();
  });

  it('adopts a directive with name and day, and holds the letter', async () => {
    const aircraft = new URL(page.url()).pathname.split('/').at(-1);
    await page.goto(`${program.url}/own/directive`);
    await settled();
    await page.getByLabel('Or paste the document').fill(stringify(W14_2));
    await page.getByRole('button', { name: 'Open it in the form' }).click();
    await page.getByRole('heading', { name: /all its 5 cases come out as written/ }).waitFor();
    const adopt = page.getByRole('region', { name: 'Adopt it' });
    await adopt.getByLabel('Adopted by').fill('A. Stranger');
    await adopt.getByLabel('On', { exact: true }).fill('2026-01-05');
    await adopt.getByRole('button', { name: 'Adopt it' }).click();
    await page.waitForURL(/\/own\/directive\/W-14/);
    await page.goto(`${program.url}/own/aircraft/${aircraft}`);
    await page.getByText(/W-14/).first().waitFor();
    await shot('own-aircraft');
    await page.goto(`${program.url}/own/letter/${aircraft}/W-14`);
    await page.getByRole('button', { name: 'Keep and print' }).click();
    await page.getByRole('link', { name: 'the letter as PDF' }).waitFor();
  });

  it('finds the log behind a cover sheet, and shows another sheet when asked', async () => {
    const book = new ExcelJS.Workbook();
    book.addWorksheet('Cover').addRows([['Log of an aircraft'], ['Its owner']]);
    book.addWorksheet('Log').addRows([
      ['Day', 'Total hours'],
      ['2024-01-31', 10.5],
    ]);
    await page.goto(`${program.url}/own/import`);
    await settled();
    await page.locator('input[type=file]').setInputFiles({
      name: 'two.xlsx',
      mimeType: 'application/octet-stream',
      buffer: Buffer.from(await book.xlsx.writeBuffer()),
    });
    const sheet = page.getByLabel('Sheet of the file');
    await sheet.waitFor();
    await expect.poll(() => sheet.inputValue()).toBe('Log');
    await expect.poll(() => page.locator('select[name="column.1"]').inputValue()).toBe('total_h');
    await accessible();
    await sheet.selectOption('Cover');
    await page.getByText('Its owner').waitFor();
  });

  it('is refused in plain words: a picture for a logbook, a directive that divides by zero', async () => {
    await page.goto(`${program.url}/own/import`);
    await settled();
    await page.locator('input[type=file]').setInputFiles({
      name: 'x.xlsx',
      mimeType: 'application/octet-stream',
      buffer: Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]),
    });
    await page.getByRole('alert').waitFor();
    await page.goto(`${program.url}/own/directive`);
    const broken = {
      ...W14_2,
      actions: [
        { ...W14_2.actions[0], counts: { expression: 'hours.total / 0.0', called: 'x', unit: 'h' } },
        W14_2.actions[1],
      ],
    };
    await page.getByLabel('Or paste the document').fill(JSON.stringify(broken));
    await page.getByRole('button', { name: 'Open it in the form' }).click();
    await page.getByRole('heading', { name: /do not come out as written/ }).waitFor();
    await page
      .getByText(/a divisor that is zero/)
      .first()
      .waitFor();
    await expect.poll(() => page.getByRole('button', { name: 'Adopt it' }).isDisabled()).toBe(true);
    await shot('refused');
  });
});

describe('a caller on the telephone', () => {
  it('gets a worst-side answer and the papers to ask for', async () => {
    await page.goto(`${program.url}/own/import/caller`);
    await settled();
    await accessible();
    for (const [label, value] of Object.entries({
      Registration: 'ZQ-RNG',
      Type: 'Whimbrel',
      Model: 'W4',
      Total: '3120',
      'Year built': '2007',
    }))
      await page.getByLabel(label, { exact: false }).first().fill(value);
    await page.getByRole('button', { name: 'Answer', exact: true }).click();
    await page.getByRole('link', { name: 'Open the aircraft' }).waitFor();
    await shot('caller');
    await page.getByRole('link', { name: 'Open the aircraft' }).click();
    await page.waitForURL(/\/own\/aircraft\//);
    await settled();
    await shot('caller-aircraft');
  });
});

describe('the plug', () => {
  it('is pulled while a page is open: the page says so; after the next start all is there', async () => {
    await page.goto(`${program.url}/own/fleet`);
    await settled();
    await program.stop('SIGKILL');
    await page.getByText('Sparwright does not answer: what this page shows may be old.').waitFor({ timeout: 20_000 });
    await page.goto('about:blank');
    await program.start();
    const shops = (await (await page.request.get(`${program.url}/api/shops`)).json()) as {
      id: string;
      aircraft: number;
    }[];
    expect(shops.find((s) => s.id === 'demo')?.aircraft).toBe(12);
    expect(shops.find((s) => s.id === 'own')?.aircraft).toBe(2);
  });
  it('no page said an error', () => {
    expect(said.filter((s) => !/status of 4\d\d|ERR_CONNECTION_REFUSED/.test(s))).toEqual([]);
  });
  it('pictures were made', () => {
    expect(
      existsSync(join(pictures, 'aircraft.png')) && readFileSync(join(pictures, 'aircraft.png')).length > 10_000,
    ).toBe(true);
  });
});
