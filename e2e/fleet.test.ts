import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessible as allAccessible, DESKTOP, TABLET } from './checks.ts';
import { openBrowser, Program } from './program.ts';

const pictures = join(process.cwd(), '.sparwright', 'pictures');
const program = new Program();
let browser: Browser;
let page: Page;
const said: string[] = [];

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  await program.start();
  browser = await openBrowser();
  const context = await browser.newContext({ viewport: DESKTOP, acceptDownloads: true });
  await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: program.url });
  page = await context.newPage();
  page.on('console', (m) => m.type() === 'error' && said.push(m.text()));
  page.on('pageerror', (e) => said.push(e.message));
  await page.request.post(`${program.url}/api/demo`, { data: {}, headers: { origin: program.url } });
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

const shot = (name: string) => page.screenshot({ path: join(pictures, `${name}.png`), fullPage: true });
const status = () => page.locator('.shown').getByRole('status').textContent();
const registrations = () => page.locator('tbody tr[data-row] th').allInnerTexts();
const chosen = () => page.locator('tbody a[tabindex="0"]').textContent();
const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '');
const computed = () => page.locator('.computing:empty').waitFor({ state: 'attached', timeout: 60_000 });
async function open(path: string) {
  await page.goto(`${program.url}/${path}`);
  await page.getByRole('main').getByRole('heading', { level: 1 }).first().waitFor();
}
const accessible = () => allAccessible(page);
/** The page never scrolls sideways, and what a finger must hit is large enough. */
async function fits() {
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('main button, main .button, main select, main tbody a, main input')]
      .map((e) => ({ box: e.getBoundingClientRect(), words: e.outerHTML.slice(0, 80) }))
      .filter(({ box, words }) => box.height > 0 && box.height < 43.5 && !words.includes('checkbox'))
      .map(({ words }) => words),
  );
  expect(small).toEqual([]);
}

describe('the fleet', () => {
  it('says who is due when; the old list of aircraft leads here', async () => {
    await open('demo/aircraft');
    await page.waitForURL(/\/demo\/fleet$/);
    await computed();
    await page.getByRole('heading', { level: 1, name: /of 12 aircraft .* overdue/ }).waitFor();
    await expect.poll(registrations).toHaveLength(12);
    await expect.poll(status).toBe('12 aircraft.');
    await accessible();
    await shot('fleet');
  });

  it('is searched as one types, and says what that hides', async () => {
    await page.keyboard.press('/');
    await page.keyboard.type('lmb');
    await expect.poll(registrations).toEqual(['ZQ-LMB']);
    await expect.poll(status).toMatch(/^1 of 12 aircraft shown\. \d+ overdue and \d+ due are hidden by the filter\.$/);
    await page.waitForURL(/search=lmb/);
    await accessible();
    await page.keyboard.press('Escape');
    await expect.poll(status).toBe('12 aircraft.');
  });

  it('is filtered by standing and by a year of the picture; back and a shared link bring it again', async () => {
    await page.getByLabel('Treat as').selectOption('not yet due');
    await expect.poll(status).toMatch(/hidden by the filter/);
    const filtered = await registrations();
    expect(filtered.length).toBeGreaterThan(0);
    const link = page.url();
    await page.locator('.long').getByRole('link').first().focus();
    await page.keyboard.press('Escape');
    await expect.poll(status).toBe('12 aircraft.');
    await page.goBack();
    await expect.poll(registrations).toEqual(filtered);
    await page.goto(link);
    await computed();
    await expect.poll(registrations).toEqual(filtered);
    await page.getByRole('button', { name: 'Show all' }).click();
    const year = page.getByRole('button', { name: /^2030: \d+ aircraft fall/ });
    await year.focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/due=2030/);
    const many = Number(/^2030: (\d+)/.exec((await year.getAttribute('aria-label'))!)![1]);
    await expect.poll(registrations).toHaveLength(many);
    await expect.poll(() => year.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('Enter');
    await expect.poll(status).toBe('12 aircraft.');
  });

  it('sorts by any column and keeps the row that is looked at', async () => {
    await page.keyboard.press('/');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('End');
    await expect.poll(focused).toMatch(/^ZQ-/);
    const last = await focused();
    await page.getByRole('button', { name: 'Owner' }).click();
    await page.waitForURL(/sort=owner/);
    await page.getByRole('columnheader', { name: 'Owner' }).and(page.locator('[aria-sort=ascending]')).waitFor();
    await expect.poll(registrations).toHaveLength(12);
    await expect.poll(chosen).toBe(last);
  });

  it('leads by the keyboard alone to an aircraft, and back to the row it was left at', async () => {
    await open('demo/fleet');
    await computed();
    await page.keyboard.press('/');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await expect.poll(focused).toMatch(/^ZQ-/);
    const name = await focused();
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/demo\/aircraft\/aircraft/);
    await page.getByText(name).first().waitFor();
    await page.goBack();
    await expect.poll(chosen).toBe(name);
  });
});

describe('the due sheet', () => {
  it('holds what falls due within the days asked for', async () => {
    await open('demo/fleet/due');
    await computed();
    await accessible();
    await shot('due-sheet');
    const year = (await page.locator('tbody tr[data-row]').all()).length;
    await page.getByRole('combobox', { name: 'Days' }).selectOption({ label: 'the next 30 days' });
    await page.waitForURL(/to=/);
    await expect.poll(() => page.locator('tbody tr[data-row]').count()).toBeLessThan(year);
  });
  it('is kept as PDF, CSV and XLSX', async () => {
    const bytes = async (name: string) => {
      const [file] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('link', { name, exact: true }).click(),
      ]);
      expect(file.suggestedFilename()).toMatch(new RegExp(`^due-sheet-.*\\.${name.toLowerCase()}$`));
      const chunks: Buffer[] = [];
      for await (const chunk of await file.createReadStream()) chunks.push(chunk as Buffer);
      return Buffer.concat(chunks);
    };
    expect((await bytes('PDF')).subarray(0, 5).toString()).toBe('%PDF-');
    const rows = await page.locator('tbody tr[data-row]').count();
    const csv = (await bytes('CSV')).toString('utf8');
    expect(csv).toContain('ZQ-');
    const book = new ExcelJS.Workbook();
    await book.xlsx.load((await bytes('XLSX')) as unknown as ArrayBuffer);
    const found = new Set<number>();
    book.worksheets[0]!.eachRow((row, n) => /ZQ-/.test(JSON.stringify(row.values)) && found.add(n));
    expect(found.size).toBe(rows);
  });
  it('is refused in plain words when the days run backwards', async () => {
    await page.goto(`${program.url}/demo/fleet/due?from=2028-01-01&to=2027-01-01`);
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').textContent()).toContain('Exchange the two days');
    await page.getByRole('link', { name: 'Show the usual days' }).click();
    await page.getByRole('heading', { level: 1 }).first().waitFor();
  });
});

describe('readings wanted', () => {
  const row = () => page.getByRole('listitem').filter({ hasText: 'ZQ-GUL' });
  it('has the request ready to copy, and keeps that it was asked', async () => {
    await open('demo/fleet/readings');
    await computed();
    await row().getByRole('button', { name: 'Request' }).click();
    const text = row().getByLabel('Request to the owner of ZQ-GUL');
    await expect.poll(() => text.inputValue()).toMatch(/^Dear .*\n[\s\S]*ZQ-GUL/);
    await row().getByRole('button', { name: 'Copy' }).click();
    await row().getByText('Copied.').waitFor();
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(await text.inputValue());
    await accessible();
    await shot('readings-wanted');
    await row().getByLabel('Asked by').fill('M. Orne');
    await row().getByRole('button', { name: 'Keep as asked' }).click();
    await row().getByText('by M. Orne').waitFor();
    await expect.poll(focused).toMatch(/the owner of ZQ-GUL was asked/);
  });
  it('takes the reply as a reading; where the aircraft stands follows at once', async () => {
    const before = await page.request.get(`${program.url}/api/shops/demo/fleet`);
    expect(await before.text()).toContain('4\u202f370.0');
    await row().getByRole('button', { name: 'Reply' }).click();
    await row().getByRole('button', { name: 'Write the reading' }).click();
    await row().getByText('Fill in the total in the book').waitFor();
    await row().getByLabel('Total in the book').fill('4401.5');
    await row().getByRole('button', { name: 'Write the reading' }).click();
    await row().waitFor({ state: 'detached' });
    await expect.poll(focused).toMatch(/reading of ZQ-GUL is written/);
    await open('demo/fleet?search=gul');
    await computed();
    await page.locator('tbody tr[data-row]').getByText('4\u202f401.5').first().waitFor();
  });
});

describe('everywhere', () => {
  it('stays within a tablet, with targets for a finger', async () => {
    await page.setViewportSize(TABLET);
    for (const path of ['demo/fleet', 'demo/fleet/due', 'demo/fleet/readings', 'own/fleet', '']) {
      await open(path);
      await page.waitForLoadState('networkidle');
      await fits();
      await shot(`tablet-${path.replaceAll('/', '-') || 'start-with-fleet'}`);
    }
    await page.setViewportSize(DESKTOP);
  });
  it('an empty shop names the two ways in', async () => {
    await open('own/fleet');
    await page.getByRole('main').getByRole('link', { name: 'Answer a caller' }).waitFor();
    await page.getByRole('main').getByRole('link', { name: 'Drop a logbook' }).waitFor();
    await accessible();
  });
  it('the list prints as a plain list, all rows', async () => {
    await open('demo/fleet');
    await computed();
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('search').isVisible()).toBe(false);
    expect(await page.locator('figure').first().isVisible()).toBe(false);
    await expect.poll(() => page.locator('tbody tr[data-row]').count()).toBe(12);
    await page.emulateMedia({ media: null });
  });
  it('when the program is gone the last rows stay, with their day', async () => {
    await open('demo/fleet');
    await computed();
    await program.stop('SIGKILL');
    await page.getByText('Sparwright does not answer: what this page shows may be old.').waitFor({ timeout: 20_000 });
    await expect.poll(registrations).toHaveLength(12);
    await page.keyboard.press('/');
    await page.keyboard.type('lmb');
    await expect.poll(registrations).toEqual(['ZQ-LMB']);
  });
  it('no page said an error', () => {
    expect(said.filter((s) => !/status of 4\d\d|ERR_CONNECTION_REFUSED/.test(s))).toEqual([]);
  });
});
