import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessible, DESKTOP, fits, TABLET } from './checks.ts';
import { openBrowser, Program } from './program.ts';

const program = new Program();
let browser: Browser;
let page: Page;
const said: string[] = [];

beforeAll(async () => {
  await program.start();
  browser = await openBrowser();
  page = await (await browser.newContext({ viewport: DESKTOP })).newPage();
  page.on('console', (m) => m.type() === 'error' && said.push(m.text()));
  page.on('pageerror', (e) => said.push(e.message));
  await page.request.post(`${program.url}/api/demo`, { data: {} });
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

const parts = () => page.getByRole('region', { name: 'Parts', exact: true });
const shortName = () => parts().getByLabel('Short name');
const answer = (words: RegExp) => page.getByRole('heading', { level: 1, name: words }).waitFor();
const shown = () =>
  parts()
    .getByLabel(/^Shown part/)
    .locator('option:checked');

describe('the head of a shop changes a structure map', () => {
  it('opens the kept one; the chosen part has handles on the plan', async () => {
    await page.goto(`${program.url}/demo/teardown/maps/whimbrel-w4-wing/write`);
    await answer(/is whole/);
    expect(await shown().textContent()).toBe('Left inboard spar');
    await page.getByRole('button', { name: /^Point 4 of Left inboard spar/ }).waitFor();
    await accessible(page);
  });
  it('a point goes where the arrow keys send it, by 10 mm, with Shift by 1 mm', async () => {
    const point = page.getByRole('button', { name: /^Point 1 of Left inboard spar/ });
    await point.focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Shift+ArrowLeft');
    await expect.poll(() => point.getAttribute('aria-label')).toMatch(/x 490 mm, y -481 mm/);
    await page.getByRole('button', { name: 'Undo the last change' }).click();
  });
  it('a short name that is taken gets a number, an emptied one stays, and one step back undoes it', async () => {
    await shortName().fill('left-tank');
    await page.keyboard.press('Tab');
    await expect.poll(() => shortName().inputValue()).toBe('left-tank-2');
    await page.getByRole('button', { name: 'Undo the last change' }).click();
    await expect.poll(() => shortName().inputValue()).toBe('left-inboard-spar');
    await shortName().fill('');
    await page.keyboard.press('Tab');
    await expect.poll(() => shortName().inputValue()).toBe('left-inboard-spar');
  });
  it('a new part says what it lacks, and is copied to the other wing', async () => {
    await parts().getByRole('button', { name: 'Add a part' }).click();
    await parts().getByLabel('Name', { exact: true }).fill('Left step');
    await answer(/not whole yet/);
    await expect.poll(() => page.getByText(/[Tt]aking it off/).count()).toBeGreaterThan(1);
    await parts().getByRole('button', { name: 'Copy to the other wing' }).click();
    await expect.poll(() => shown().textContent()).toMatch(/^Right step/);
    await parts()
      .getByRole('button', { name: /^Take away Right step/ })
      .click();
    await parts()
      .getByLabel(/^Shown part/)
      .selectOption({ label: 'Left step (something is to do)' });
    await parts()
      .getByRole('button', { name: /^Take away Left step/ })
      .click();
    await answer(/is whole/);
  });
  it('is kept as a new issue under a name, and fits a tablet', async () => {
    await page.setViewportSize(TABLET);
    await fits(page);
    const keep = page.getByRole('region', { name: 'Keep it' });
    await keep.getByLabel('Kept by').fill('M. Orne');
    await keep.getByRole('button', { name: 'Keep the new issue' }).click();
    await answer(/65 parts.*held by.*142 rows/);
    await fits(page);
    await accessible(page);
  });
  it('no page said an error', () => expect(said).toEqual([]));
});
