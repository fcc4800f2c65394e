import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DESKTOP } from './checks.ts';
import { openBrowser, Program } from './program.ts';

/** What the hand expects of every page: the focus stays, what was dropped stays, the last press counts. */
const program = new Program();
let browser: Browser;
let page: Page;
const at = '/demo/aircraft/aircraft%3A0612';
beforeAll(async () => {
  await program.start();
  browser = await openBrowser();
  page = await (await browser.newContext({ viewport: DESKTOP })).newPage();
  await page.request.post(`${program.url}/api/demo`, { data: {}, headers: { origin: program.url } });
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});
const open = async (path: string) => {
  await page.goto(`${program.url}${path}`);
  await page.getByRole('main').getByRole('heading', { level: 1 }).first().waitFor();
};
const focused = () => page.evaluate(() => document.activeElement?.tagName ?? '');

describe('the last press counts', () => {
  it('a question asked while another is computed is the one answered, however late the first comes', async () => {
    await open(`${at}/what-if`);
    let release = () => {};
    const held = new Promise<void>((done) => {
      release = done;
    });
    await page.route('**/what-if', async (route) => {
      const first = route.request().postData()?.includes('"rate_h_per_year":11') ?? false;
      if (first) await held;
      await route.continue().catch(() => undefined);
    });
    const form = page.getByRole('form', { name: 'Another flying rate' });
    await form.getByLabel('Hours a year').fill('11');
    await form.getByRole('button').click();
    await form.getByRole('button', { name: 'Computing ...' }).waitFor();
    await form.getByLabel('Hours a year').fill('222');
    await form.getByRole('button').click();
    await page.locator('.answered').getByText('If it flew 222 h a year').first().waitFor();
    const late = page.waitForResponse((r) => r.request().postData()?.includes('"rate_h_per_year":11') ?? false);
    release();
    await late;
    await page.waitForTimeout(300);
    expect(await page.locator('.answered').textContent()).toContain('If it flew 222 h a year');
    await expect.poll(() => form.getByRole('button').textContent()).toBe('Show it at this rate');
    await page.unroute('**/what-if');
  });
});

describe('the focus stays', () => {
  it('on the button after an entry is written', async () => {
    await open(at);
    await page.locator('details.form > summary').filter({ hasText: 'A reading' }).click();
    const form = page.locator('details.form[open] form').first();
    await form.getByLabel('Total in the book').fill('9000');
    const button = form.locator('button[type=submit]');
    await button.focus();
    await page.keyboard.press('Enter');
    await form.getByRole('status').getByText('Written to the log', { exact: false }).waitFor();
    await expect.poll(focused).toBe('BUTTON');
  });
});

describe('keys of the fleet while the page has the focus', () => {
  it('Esc shows all again, the arrows go to the list', async () => {
    await open('/demo/fleet?paper=yes');
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.getByRole('button', { name: 'Show all' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Show all' }).waitFor({ state: 'detached' });
    await expect.poll(focused).toMatch(/BODY|MAIN/);
    await page.keyboard.press('ArrowDown');
    await expect.poll(focused).toBe('A');
  });
});

describe('a page dropped before the book is named', () => {
  it('waits for the name, then is kept', async () => {
    await open(`${at}/papers`);
    const png = await page.screenshot({ clip: { x: 0, y: 0, width: 40, height: 40 } });
    await page
      .locator('input[type=file]')
      .first()
      .setInputFiles({ name: 'page 7.png', mimeType: 'image/png', buffer: png });
    await page.getByText('waits here', { exact: false }).waitFor();
    await page.getByLabel('Book or paper').fill('Book 9');
    await page.getByLabel('Seen by').fill('M. Orne');
    await page.keyboard.press('Tab');
    await page.getByText('1 page is kept.').waitFor();
    await page.getByText('waits here', { exact: false }).waitFor({ state: 'detached' });
  });
});

describe('an address that cannot be read', () => {
  it('is a page that is not there', async () => {
    await page.goto(`${program.url}/%E0%A4%A`);
    await page.getByText('There is no page at this address.').waitFor();
    await page.goto(`${program.url}/demo/aircraft/%E0%A4%A`);
    await page.getByText('There is no page at this address.').waitFor();
  });
});
