import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessible, DESKTOP, TABLET } from './checks.ts';
import { openBrowser, Program } from './program.ts';

const pictures = join(process.cwd(), '.sparwright', 'pictures');
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
const heading = () => page.getByRole('main').getByRole('heading', { level: 1 });
const wide = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

describe('reading', () => {
  it.each(['refusals', 'methods/record', 'methods/directive', 'methods/outlook'])(
    '%s: reads on a desk and on a tablet',
    async (path) => {
      for (const size of [DESKTOP, TABLET]) {
        await page.setViewportSize(size);
        await page.goto(`${program.url}/${path}`);
        await heading().waitFor();
        const name = `${path.replace('/', '-')}-${size.width}`;
        await page.screenshot({ path: join(pictures, `${name}.png`) });
        expect(await wide()).toBeLessThanOrEqual(0);
      }
      await accessible(page);
      await page.setViewportSize(DESKTOP);
    },
  );

  it('leads from a why to the method behind it and back, by keyboard', async () => {
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A0612`);
    const why = page.getByRole('button', { name: 'why' }).first();
    await why.focus();
    await page.keyboard.press('Enter');
    const method = page.locator('.opened:not([hidden])').getByRole('link', { name: 'directive', exact: true });
    await method.focus();
    await page.keyboard.press('Enter');
    await page.waitForURL('**/methods/directive');
    await expect.poll(() => heading().textContent()).toContain('directive');
    await page.goBack();
    await page.getByRole('button', { name: 'why' }).first().waitFor();
    await expect.poll(() => page.url()).toContain('/demo/aircraft/');
  });

  it('leads from a refusal to its row, in sight and marked', async () => {
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A9999`);
    const code = page.getByRole('alert').locator('a').first();
    const words = (await code.textContent())!;
    await code.focus();
    await page.keyboard.press('Enter');
    await page.waitForURL('**/refusals#**');
    const row = page.locator(`[id="${words}"]`);
    await row.waitFor();
    await expect.poll(() => row.evaluate((r) => r.matches(':target'))).toBe(true);
    await expect
      .poll(() => row.evaluate((r) => r.getBoundingClientRect().top > 0 && r.getBoundingClientRect().top < innerHeight))
      .toBe(true);
    expect(await row.textContent()).toContain(words);
    await page.screenshot({ path: join(pictures, 'refusal-row.png') });
  });

  it('stands at the foot of the path and of the start page', async () => {
    await page.goto(program.url);
    for (const [link, url] of [
      ['Manual', '/manual'],
      ['How it computes: Growth', '/methods/growth'],
      ['How it computes: Record', '/methods/record'],
      ['What it refuses', '/refusals'],
    ] as const) {
      await page.getByRole('navigation', { name: 'Path' }).getByRole('link', { name: link }).click();
      await page.waitForURL(`**${url}`);
      await heading().waitFor();
    }
  });
});
