import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessible, DESKTOP, fits, TABLET } from './checks.ts';
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
  await page.request.post(`${program.url}/api/demo`, { data: {} });
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

const shot = (name: string) => page.screenshot({ path: join(pictures, `${name}.png`), fullPage: true });
const answer = (words: RegExp) => page.getByRole('heading', { level: 1, name: words }).waitFor();
const sentence = () => page.getByRole('heading', { level: 1 }).textContent();
const beside = () => page.getByRole('complementary', { name: 'Its answer' });
const part = (name: string | RegExp) => page.getByRole('region', { name });
async function type(within: ReturnType<typeof part>, label: string, text: string, nth = 0): Promise<void> {
  await within.getByLabel(label, { exact: true }).nth(nth).focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.insertText(text);
  await page.keyboard.press('Tab');
}
async function choose(within: ReturnType<typeof part>, label: string, option: string): Promise<void> {
  const field = within.getByLabel(label, { exact: true });
  await field.focus();
  await field.selectOption({ label: option });
}

async function source(within: ReturnType<typeof part>, text: string): Promise<void> {
  await type(within, 'Source', text);
  await choose(within, 'How well known', 'made up');
}

describe('an engineer with a crack to judge', () => {
  it('begins an empty form; the place is drawn as soon as its lengths are there', async () => {
    await page.goto(`${program.url}/demo/growth`);
    await page.getByText('Whimbrel W4, crack at a spar cap hole').first().waitFor();
    await page.getByRole('link', { name: 'Write a growth document' }).focus();
    await page.keyboard.press('Enter');
    await answer(/not whole yet/);
    await type(part('What it is'), 'Title', 'Whimbrel W4, hole at the strut');
    await type(part('What it is'), 'Models of aircraft', 'W4-T');
    const place = part('The place');
    await type(place, 'Place', 'Lower spar cap, bolt hole at the strut');
    await type(place, 'Width of the plate mm', '60');
    await type(place, 'Thickness mm', '5');
    await type(place, 'Diameter of the hole mm', '8');
    await type(part('The first flaw'), 'Length c mm', '1.27');
    await type(part('The first flaw'), 'Depth a mm', '1.27');
    await place
      .getByRole('img', { name: /to scale.*60 mm wide and 5 mm thick with a hole of 8 mm.*1.27 mm long/ })
      .waitFor();
    await accessible(page);
  });

  it('takes material, loading, limit stress, detectable size and rule, each with its source', async () => {
    await type(part('The place'), 'Remote stress at limit load MPa', '165');
    await source(part('The place'), 'Stress report 7 (invented)');
    await source(part('The first flaw'), 'Handbook value (invented)');
    const look = part('What a look can find');
    await type(look, 'Length c mm', '0.8');
    await type(look, 'Depth a mm', '0.8');
    await type(look, 'Method', 'eddy current, bolt out');
    await source(look, 'Trials of the shop (invented)');
    const material = part('The material');
    await material.getByLabel('Material', { exact: true }).selectOption('2024-t3');
    await material.getByLabel('Growth law').selectOption('walker');
    await choose(part('What works the crack'), 'Usage document', 'Whimbrel W4, lower spar cap');
    await choose(part('What works the crack'), 'Flying to come', 'all in Private flying');
    await source(part('The rule'), 'Half of the growth, by custom (invented)');
    await answer(/is whole/);
    await beside().getByRole('heading', { level: 2 }).first().waitFor();
    await accessible(page);
    await shot('growth-write');
  });

  it('what the solution cannot hold is refused at the place, and the last answer stays', async () => {
    const shown = await beside().getByRole('heading', { level: 2 }).first().textContent();
    await type(part('The first flaw'), 'Depth a mm', '4.9');
    await type(part('The first flaw'), 'Length c mm', '0.2');
    await answer(/cannot be answered/);
    await beside().getByRole('alert').waitFor();
    await part('The place').locator('.wrong').or(part('The first flaw').locator('.wrong')).first().waitFor();
    expect(await beside().getByRole('heading', { level: 2, name: shown! }).count()).toBe(1);
    await type(part('The first flaw'), 'Depth a mm', '1.27');
    await type(part('The first flaw'), 'Length c mm', '1.27');
    await answer(/is whole. Look its answer over/);
  });

  it('fits a tablet; inch and ksi change the answer beside the form, not the figures in it', async () => {
    await page.setViewportSize(TABLET);
    await fits(page);
    await shot('tablet-growth-write');
    await page.setViewportSize(DESKTOP);
    await page.getByLabel('Lengths and stresses in').first().selectOption('inch');
    expect(await part('The place').getByLabel('Width of the plate mm').inputValue()).toBe('60');
    await part('The place').locator('svg text', { hasText: '2.362 in' }).waitFor();
    await page.getByLabel('Lengths and stresses in').first().selectOption('mm');
  });

  it('keeps it; its page compares the uses, has files, and the document comes back as it was kept', async () => {
    await answer(/is whole. Look its answer over/);
    await type(part('Keep it'), 'Kept by', 'M. Orne');
    await part('Keep it').getByRole('button', { name: 'Keep it' }).focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/demo\/growth\/whimbrel-w4-hole-at-the-strut$/);
    await page.getByRole('heading', { level: 1 }).waitFor();
    const own = `${program.url}/api/shops/demo/growth/whimbrel-w4-hole-at-the-strut/document`;
    expect((await (await page.request.get(own)).json()).geometry).toEqual({
      shape: 'hole_corner',
      cracks: 1,
      width_mm: 60,
      thickness_mm: 5,
      diameter_mm: 8,
    });
    const pdf = await page.request.get(
      `${program.url}${await page.getByRole('link', { name: /^PDF/ }).getAttribute('href')}`,
    );
    expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-');
    await accessible(page);
    await shot('growth-kept');
  });
});

describe('on an aircraft', () => {
  const at = '/demo/aircraft/aircraft%3A0612/growth';
  it('no look is later than the directive asks, and the page says by which', async () => {
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A0612`);
    await page.getByRole('navigation', { name: 'Path' }).getByRole('link', { name: 'Growth' }).nth(1).focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/aircraft%3A0612\/growth$/);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.getByText(/W-14/).first().waitFor();
    await accessible(page);
    await fits(page);
    await shot('growth-aircraft');
  });

  it('another mix to come changes the answer: one use, then shares that are stated', async () => {
    await page.getByLabel('By the document').selectOption('whimbrel-w4-crack-at-a-spar-cap-hole');
    await page.getByRole('heading', { level: 1 }).waitFor();
    const before = await page.locator('main').textContent();
    await page.getByLabel('Flying to come').selectOption('tow');
    await expect.poll(() => page.url()).toContain('mix=tow');
    await expect.poll(() => page.locator('main').textContent(), { timeout: 20_000 }).not.toBe(before);
    await page.getByLabel('Flying to come').selectOption('shares');
    const shares = page.getByRole('form', { name: 'Shares of the hours' });
    await shares.getByLabel('Private flying').fill('0.5');
    await shares.getByLabel('Glider towing').fill('0.5');
    await shares.getByRole('button', { name: 'Show it at these shares' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.url()).toMatch(/mix=private%3A0.5%2Ctow%3A0.5|mix=private:0.5,tow:0.5/);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await expect.poll(async () => (await sentence())?.length).toBeGreaterThan(20);
  });

  it('shares that are none are refused in words, and the way back stays on the page', async () => {
    await page.goto(`${program.url}${at}?mix=tow%3A7`);
    await page.getByRole('alert').first().waitFor();
    await page.getByLabel('Flying to come').selectOption('tow');
    await page.getByRole('heading', { level: 1 }).waitFor();
  });

  it('an aircraft that no document fits says what is missing and where to enter it', async () => {
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A2031/growth`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page
      .getByRole('link', { name: /document/i })
      .first()
      .waitFor();
    await accessible(page);
    await page.goto(`${program.url}/own/growth`);
    await page.getByRole('link', { name: 'Write a growth document' }).waitFor();
  });

  it('no page said an error', () => {
    expect(said.filter((s) => !/status of 4\d\d/.test(s))).toEqual([]);
  });
});

it('a sequence too large for the browser: said before it is read, saved as a file, what fitted stays', async () => {
  const context = await browser.newContext({ viewport: DESKTOP, acceptDownloads: true });
  const own = await context.newPage();
  await own.goto(`${program.url}/demo/growth/new`);
  const works = own.getByRole('region', { name: 'What works the crack' });
  await own.getByLabel('Title', { exact: true }).fill('Long sequence');
  await works.getByLabel('Its cycles come from').selectOption('sequence');
  await works.getByLabel('Paste the cycles, in MPa').focus();
  await own.evaluate(() => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', Array.from({ length: 700_000 }, (_, i) => `${90 + (i % 9)}.25\t-1`).join('\n'));
    const paste = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true });
    document.activeElement!.dispatchEvent(paste);
  });
  await works.getByText(/^Reading 700.000 rows/).waitFor();
  await works.getByRole('button', { name: /^Take 700.000 rows/ }).click();
  await own.getByText(/too large for this browser to keep, which holds it as it stood at/).waitFor();
  const saved = own.waitForEvent('download');
  await own.getByRole('button', { name: 'Save the document as a file' }).click();
  expect((await saved).suggestedFilename()).toBe('growth-draft.json');
  await own.reload();
  await own.getByText('Taken up as this browser kept it').waitFor();
  expect(await own.getByLabel('Title', { exact: true }).inputValue()).toBe('Long sequence');
  await context.close();
});
