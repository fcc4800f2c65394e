import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessible, DESKTOP, fits, TABLET } from './checks.ts';
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
  await page.request.post(`${program.url}/api/demo`, { data: {} });
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

const shot = (name: string) => page.screenshot({ path: join(pictures, `${name}.png`), fullPage: true });
const answer = (words: RegExp) => page.getByRole('heading', { level: 1, name: words }).waitFor();
const beside = () => page.getByRole('complementary', { name: 'Its answer' });
const part = (name: string | RegExp) => page.getByRole('region', { name });
/** Typed with the keyboard alone: the field is found by its name, reached, and written into. */
async function type(within: ReturnType<typeof part>, label: string, text: string, nth = 0): Promise<void> {
  await within.getByLabel(label, { exact: true }).nth(nth).focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.insertText(text);
  await page.keyboard.press('Tab');
}
async function press(within: ReturnType<typeof part>, name: string | RegExp): Promise<void> {
  await within.getByRole('button', { name }).first().focus();
  await page.keyboard.press('Enter');
}
async function source(within: ReturnType<typeof part>, text: string): Promise<void> {
  await type(within, 'Source', text);
  await within.getByLabel('How well known', { exact: true }).selectOption('made up');
}

describe('an engineer with a stress report and a spreadsheet', () => {
  it('finds the list in the path, and begins an empty form that says what is still to do', async () => {
    await page.goto(`${program.url}/demo/fleet`);
    const path = page.getByRole('navigation', { name: 'Path' });
    await path.getByRole('link', { name: 'Usage' }).first().focus();
    await page.keyboard.press('Enter');
    await page.getByText('Whimbrel W4, lower spar cap').first().waitFor();
    await accessible(page);
    await page.getByRole('link', { name: 'Write a usage document' }).focus();
    await page.keyboard.press('Enter');
    await answer(/not whole yet: \d+ things are still to do/);
    await beside().getByRole('button', { name: 'Title' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-place'))).toBe('title');
  });

  it('enters the aeroplane and a use with the keyboard alone, each figure with its source', async () => {
    await type(part('What it is'), 'Title', 'Fieldbird, root of the front spar');
    await type(part('What it is'), 'Models of aircraft', 'W2-A');
    const aeroplane = part('The aeroplane');
    await type(aeroplane, 'Type', 'Fieldbird');
    await type(aeroplane, 'Limit load factor up g', '4,4');
    await aeroplane.getByText('"4,4". Write 4.4: a number with a decimal point.').waitFor();
    await type(aeroplane, 'Limit load factor up g', '4.4');
    await type(aeroplane, 'Limit load factor down g', '-1.8');
    await source(aeroplane, 'Flight manual (invented)');
    const use = part(/^Use 1/);
    await type(use, 'Mean length of a flight h', '0.5');
    await type(use, 'Landings a flight', '1');
  });

  it('pastes a table from a spreadsheet: heading and decimal comma are told, rows are taken', async () => {
    const use = part(/^Use 1/);
    await press(use, /^Add a table of load factors/);
    await use.locator('select:focus').waitFor();
    await expect
      .poll(() => use.getByLabel('What loads the wing').evaluate((e) => e === document.activeElement))
      .toBe(true);
    await use.getByLabel('Paste its table').focus();
    await page.keyboard.insertText('level\ttimes per hour\n0,5\t40\n1,0\t6,5\n1,5\t0,9\n2,5\t0,012\n');
    await use.getByText(/4 rows: first level 0\.5, times 40; last level 2\.5, times 0\.012/).waitFor();
    await use.getByText(/The comma is read as the decimal sign/).waitFor();
    await press(use, 'Take 4 rows');
    await use.getByText('4 rows taken.').waitFor();
    await expect.poll(() => use.getByLabel('Paste its table').evaluate((e) => e === document.activeElement)).toBe(true);
    const cells = use.getByRole('table', { name: /^Upward/ }).getByRole('textbox');
    await expect.poll(() => cells.count()).toBe(8);
    await source(use, 'Counted on the type (invented)');
  });

  it('a table that does not fall is refused at the table, and the answer comes when it is put right', async () => {
    const place = part('The place, and its stress');
    await type(place, 'Place', 'Front spar, lower cap at the root');
    await type(place, 'Stress at 1 g in flight MPa', '42');
    await type(place, 'Stress standing on the ground MPa', '-8');
    await source(place, 'Stress report 7 (invented)');
    const tires = part('How the place tires');
    await tires.getByLabel('S-N curve').selectOption({ index: 1 });
    await type(tires, 'Scatter factor', '8');
    await source(tires, 'Shop practice (invented)');
    await answer(/is whole/);
    await beside().getByRole('heading', { level: 2 }).first().waitFor();
    const use = part(/^Use 1/);
    const times = use.getByLabel(/^Upward.*Times, row 3/);
    await times.focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.insertText('99');
    await answer(/reads, but it cannot be answered/);
    await page.keyboard.press('Tab');
    await use
      .getByText(/99 times follow/)
      .first()
      .waitFor();
    await times.fill('0.9');
    await answer(/is whole. Look its answer over/);
    await accessible(page);
    await shot('usage-write');
  });

  it('a reload loses nothing', async () => {
    await page.reload();
    await answer(/is whole/);
    await page.getByText(/Taken up as this browser kept it/).waitFor();
    expect(await part('The aeroplane').getByLabel('Limit load factor up').inputValue()).toBe('4.4');
  });

  it('inch and ksi: new figures are named so, those that stand keep their unit', async () => {
    await page.getByLabel('Lengths and stresses in').first().selectOption('inch');
    await page.getByText(/2 figures stand in mm and MPa/).waitFor();
    const place = part('The place, and its stress');
    await type(place, 'More for each further g ksi', '6');
    expect(await place.getByLabel('Stress at 1 g in flight MPa').inputValue()).toBe('42');
    await answer(/is whole/);
    await type(place, 'More for each further g ksi', '');
    await page.getByLabel('Lengths and stresses in').first().selectOption('mm');
  });

  it('fits a tablet', async () => {
    await page.setViewportSize(TABLET);
    await fits(page);
    await shot('tablet-usage-write');
    await page.setViewportSize(DESKTOP);
  });

  it('keeps it under its title, and its page has files and a way to the next issue', async () => {
    const keep = part('Keep it');
    await type(keep, 'Kept by', 'M. Orne');
    await press(keep, 'Keep it');
    await page.waitForURL(/\/demo\/usage\/fieldbird-root-of-the-front-spar$/);
    await page.getByRole('heading', { level: 1 }).waitFor();
    const pdf = await page.request.get(
      `${program.url}${await page.getByRole('link', { name: /^PDF/ }).getAttribute('href')}`,
    );
    expect(pdf.headers()['content-type']).toBe('application/pdf');
    expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-');
    await accessible(page);
    await shot('usage-kept');
    await page.getByRole('link', { name: 'Write a new issue' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText(/Starts from "Fieldbird, root of the front spar" as it is kept/).waitFor();
    await page.getByRole('button', { name: 'Keep the new issue' }).waitFor();
  });
});

describe('two browsers at one document', () => {
  const at = '/demo/usage/fieldbird-root-of-the-front-spar';
  it('what the other kept meanwhile is told, taken over or written over, never lost', async () => {
    const second = await (await browser.newContext({ viewport: DESKTOP })).newPage();
    for (const p of [page, second]) {
      await p.goto(`${program.url}${at}/write`);
      await p.getByRole('heading', { level: 1, name: /is whole. Look its answer over/ }).waitFor();
    }
    const keepAs = async (p: Page, name: string, factor: string) => {
      await p.getByLabel('Scatter factor').fill(factor);
      await p.getByRole('heading', { level: 1, name: /is whole. Look its answer over/ }).waitFor();
      await p.getByLabel('Kept by').fill(name);
      await p.getByRole('button', { name: 'Keep the new issue' }).click();
    };
    await keepAs(second, 'A. Second', '5');
    await second.waitForURL(new RegExp(`${at}$`));
    await keepAs(page, 'M. Orne', '6');
    await page
      .getByRole('alert')
      .getByText(/was kept by A\. Second/)
      .waitFor();
    await page.getByRole('button', { name: 'Take the other one into this form' }).click();
    await expect.poll(() => page.getByLabel('Scatter factor').inputValue()).toBe('5');
    await page.getByRole('button', { name: 'Undo the last change' }).click();
    await expect.poll(() => page.getByLabel('Scatter factor').inputValue()).toBe('6');
    await answer(/is whole. Look its answer over/);
    await page.getByRole('button', { name: 'Keep the new issue' }).click();
    await page.waitForURL(new RegExp(`${at}$`));
    await second.close();
  });
});

describe('on an aircraft', () => {
  it('says by which document, of which part, and how hard it was flown', async () => {
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A0612`);
    const path = page.getByRole('navigation', { name: 'Path' });
    await path.getByRole('heading', { name: 'Understand' }).waitFor();
    await path.getByRole('link', { name: 'Usage' }).nth(1).focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/aircraft%3A0612\/usage$/);
    await answer(/private flying/);
    await accessible(page);
    await fits(page);
    await shot('usage-aircraft');
    const before = await page.getByRole('heading', { level: 1 }).textContent();
    await page.getByLabel('By the document').selectOption('fieldbird-root-of-the-front-spar');
    await expect
      .poll(() => page.getByRole('heading', { level: 1 }).textContent(), { timeout: 20_000 })
      .not.toBe(before);
    await expect.poll(() => page.url()).toContain('basis=fieldbird');
  });

  it('is withdrawn with a reason, and the list says so', async () => {
    await page.goto(`${program.url}/demo/usage/fieldbird-root-of-the-front-spar`);
    await page.getByText('Withdraw Fieldbird').click();
    await page.getByLabel('Withdrawn by').fill('M. Orne');
    await page.getByLabel('Reason').fill('The stress report was withdrawn.');
    await page.getByRole('button', { name: 'Withdraw it' }).click();
    await page.waitForURL(/\/demo\/usage$/);
    await page.getByRole('heading', { level: 1 }).waitFor();
  });

  it('a shop that keeps none says how to begin', async () => {
    await page.goto(`${program.url}/own/usage`);
    await page.getByRole('link', { name: 'Write a usage document' }).waitFor();
  });

  it('the program gone while typing: a sentence, and nothing is lost', async () => {
    await page.goto(`${program.url}/demo/usage/new`);
    await answer(/not whole yet/);
    await program.stop('SIGKILL');
    await part('What it is').getByLabel('Title').fill('Typed while the program was gone');
    await page.getByText(/nothing is checked at the moment/).waitFor();
    await page.getByText(/^Kept in this browser at/).waitFor();
    const kept = () => page.evaluate(() => localStorage.getItem('sparwright.usage.demo.new'));
    await expect.poll(kept).toContain('Typed while the program was gone');
  });

  it('no page said an error', () => {
    expect(said.filter((s) => !/status of 4\d\d|ERR_CONNECTION_REFUSED/.test(s))).toEqual([]);
  });
});
