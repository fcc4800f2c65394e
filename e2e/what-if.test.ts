import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessible, DESKTOP, TABLET } from './checks.ts';
import { openBrowser, Program } from './program.ts';

const pictures = join(process.cwd(), '.sparwright', 'pictures');
const at = '/demo/aircraft/aircraft%3A0612';
const program = new Program();
let browser: Browser;
let page: Page;

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  await program.start();
  browser = await openBrowser();
  page = await (await browser.newContext({ viewport: DESKTOP })).newPage();
  await page.request.post(`${program.url}/api/demo`, { data: {}, headers: { origin: program.url } });
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});
const entries = async () => {
  const shops = await (await page.request.get(`${program.url}/api/shops`)).json();
  return shops.find((s: { id: string }) => s.id === 'demo').entries as number;
};
/** Fills what a form needs, sends it with the keyboard, and reads the sentence that has the focus. */
async function ask(form: string, fill: Readonly<Record<string, string>>): Promise<string> {
  const fields = page.getByRole('form', { name: form });
  await fields.waitFor();
  for (const [label, value] of Object.entries(fill)) await fields.getByLabel(label).fill(value);
  const before = await page.locator('.answered').textContent();
  await fields.getByRole('button').focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('.answered').textContent(), { timeout: 30_000 }).not.toBe(before);
  await expect.poll(() => page.evaluate(() => document.activeElement?.className), { timeout: 10_000 }).toBe('answered');
  return (await page.locator('.answered .say').first().textContent()) ?? '';
}

describe('what if', () => {
  it('answers the four questions by keyboard; the sentence comes first and has the focus', async () => {
    await page.goto(`${program.url}${at}`);
    await page.getByRole('navigation', { name: 'Path' }).getByRole('link', { name: 'What if' }).click();
    const recorded = await entries();
    const said = [
      await ask('Another flying rate', { 'Hours a year': '400' }),
      await ask('Another use from a day', { 'Landings an hour': '9' }),
      await ask('A part moved', {}),
      await ask('A paper found', {}),
    ];
    expect(new Set(said).size).toBe(4);
    for (const sentence of said) expect(sentence.length).toBeGreaterThan(20);
    const top = await page.locator('.answered').evaluate((e) => e.getBoundingClientRect().top);
    expect(Math.abs(top)).toBeLessThan(300);
    expect(await entries()).toBe(recorded);
  });

  it('says no where the answer would stand, and what was typed stays', async () => {
    const form = page.getByRole('form', { name: 'A paper found' });
    await form.getByLabel('Total at its end').fill('1');
    await form.getByRole('button').click();
    await page.locator('.answered').getByRole('alert').or(page.locator('.answered .say')).first().waitFor();
    expect(await form.getByLabel('Total at its end').inputValue()).toBe('1');
  });

  it('stands on a desk and on a tablet, for everyone', async () => {
    for (const size of [DESKTOP, TABLET]) {
      await page.setViewportSize(size);
      await page.goto(`${program.url}${at}/what-if`);
      await ask('Another flying rate', { 'Hours a year': '400' });
      await page.screenshot({ path: join(pictures, `what-if-${size.width}.png`), fullPage: true });
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      await accessible(page);
    }
  });
});
