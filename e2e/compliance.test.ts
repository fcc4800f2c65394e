import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessible as allAccessible, fits as allFits, DESKTOP, TABLET } from './checks.ts';
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
  page = await (await browser.newContext({ viewport: DESKTOP, acceptDownloads: true })).newPage();
  page.on('console', (m) => m.type() === 'error' && said.push(m.text()));
  page.on('pageerror', (e) => said.push(e.message));
  await page.request.post(`${program.url}/api/demo`, { headers: { origin: program.url } });
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

const shot = (name: string) => page.screenshot({ path: join(pictures, `${name}.png`), fullPage: true });
const row = (part: string, action: string): Locator =>
  page
    .getByRole('table', { name: 'In force' })
    .getByRole('row', { name: new RegExp(`${part}.*${action}`, 's') })
    .first();
const accessible = () => allAccessible(page);
const fits = () => allFits(page);
/** To a control by the keyboard alone. */
async function tabTo(target: Locator) {
  const reached = () => target.evaluate((e) => e === document.activeElement);
  for (let i = 0; i < 120 && !(await reached()); i++) await page.keyboard.press('Tab');
  expect(await reached()).toBe(true);
}

describe('the compliance list', () => {
  it('of an overdue tug says what is not on record, and the ferry permit in one line', async () => {
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A0433`);
    await page.getByRole('link', { name: 'Compliance' }).click();
    await row('Left inboard spar', 'crack check').getByText('not on record').waitFor();
    await page.getByText(/ferry permit, FP-118 .* it changes no standing/).waitFor();
    await accessible();
    await fits();
    await shot('compliance');
  });

  it('takes an accomplishment of one side by the keyboard alone, and changes at once for that side', async () => {
    await tabTo(page.getByText('An action of a directive was done'));
    await page.keyboard.press('Enter');
    const form = page.locator('details[open] form');
    await tabTo(form.getByLabel('Directive'));
    await page.keyboard.type('W-14');
    await tabTo(form.getByLabel('Worked on'));
    await expect
      .poll(() => form.getByLabel('Worked on').locator('option').allTextContents())
      .toEqual(['please choose', 'Left inboard spar', 'Right inboard spar', 'Both sides: the paper names both']);
    await page.keyboard.type('Left');
    for (const [label, words] of [
      ['Method', 'eddy current'],
      ['Total then', '1513.2'],
      ['Signed by', 'M. Orne'],
      ['Certificate number', 'ZQ-M-114'],
    ] as const) {
      await tabTo(form.getByLabel(label));
      await page.keyboard.type(words);
    }
    await tabTo(form.getByRole('button', { name: 'Write the accomplishment' }));
    await page.keyboard.press('Enter');
    await row('Left inboard spar', 'crack check').getByText('done and repeating').waitFor();
    const left = await row('Left inboard spar', 'crack check').textContent();
    expect(left).toContain('ZQ-M-114');
    expect(left).toContain('eddy current');
    const right = await row('Right inboard spar', 'crack check').textContent();
    expect(right).toContain('overdue');
    expect(right).toContain('not on record');
    await page.getByText('directive.one-side-on-record').waitFor({ state: 'attached' });
  });

  it('asks for a finding of each side where both are chosen, and refuses none', async () => {
    const form = page.locator('details[open] form');
    await form.getByLabel('Directive').selectOption('W-14');
    await form.getByLabel('Worked on').selectOption('both');
    await expect.poll(() => form.getByLabel(/^Found, (left|right) side/).count()).toBe(2);
    await form.getByLabel('Found, right side').fill('123');
    await form.getByRole('button', { name: 'Write the accomplishment' }).click();
    await page.getByText('Say in letters what was found on each side').waitFor();
    await accessible();
  });

  it('is handed on as a PDF to sign', async () => {
    const href = await page.getByRole('link', { name: /PDF, to sign/ }).getAttribute('href');
    const answer = await page.request.get(new URL(href!, program.url).href);
    expect((await answer.body()).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

describe('alternatives and permits', () => {
  it('one alternative for two serials in one go; a serial that is not there writes nothing', async () => {
    await page.goto(`${program.url}/demo/fleet/approvals`);
    await page.getByText('An alternative means was approved for several aircraft').click();
    const form = page.locator('details[open] form');
    await form.getByLabel('Reference').fill('AM-20');
    await form.getByLabel('Directive').selectOption('W-14');
    await form.getByLabel('Conditions').fill('The tug flies solo');
    await form.getByLabel('For', { exact: true }).fill('ZQ-JAY, 9999');
    await form.getByRole('button', { name: /Write/ }).click();
    await page.getByText('no aircraft 9999').waitFor();
    await form.getByLabel('For', { exact: true }).fill('ZQ-JAY, 0588');
    await form.getByRole('button', { name: /Write/ }).click();
    await page
      .getByRole('cell', { name: 'ZQ-PEM, ZQ-JAY' })
      .or(page.getByRole('cell', { name: 'ZQ-JAY, ZQ-PEM' }))
      .waitFor();
    await accessible();
    await fits();
    await shot('approvals');
  });

  it('says whom a revocation would hit before it is confirmed; confirmed, they stand so', async () => {
    const panel = page.getByRole('region', { name: 'Revoke one' });
    await panel.getByLabel('Reference').selectOption('AM-20');
    await panel.getByRole('button', { name: 'See whom it would hit' }).click();
    const hits = page.getByRole('table', { name: 'Who would be hit' });
    await hits.waitFor();
    expect(await hits.getByRole('row', { name: /ZQ-JAY.*Right inboard spar.*overdue/s }).count()).toBe(1);
    expect(await hits.getByRole('row', { name: /ZQ-PEM/ }).count()).toBe(2);
    await accessible();
    await shot('revoking');
    await panel.getByLabel('Why').fill('A crack was found beside it');
    await panel.getByRole('button', { name: 'Revoke AM-20' }).click();
    await page.getByText('AM-20 is revoked').waitFor();
    await page.getByRole('cell', { name: /A crack was found beside it/ }).waitFor();
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A0433/compliance`);
    await row('Right inboard spar', 'crack check').getByText('overdue').waitFor();
  });

  it('fits a tablet', async () => {
    await page.setViewportSize(TABLET);
    for (const path of ['aircraft/aircraft%3A0588/compliance', 'fleet/approvals']) {
      await page.goto(`${program.url}/demo/${path}`);
      await page.getByRole('main').getByRole('heading', { level: 1 }).first().waitFor();
      await page.waitForLoadState('networkidle');
      await fits();
      await shot(`tablet-${path.split('/').at(-1)}`);
    }
    expect(said).toEqual([]);
  });
});
