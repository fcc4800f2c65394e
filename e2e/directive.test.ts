import { mkdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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
  await page.request.post(`${program.url}/api/demo`, { data: {} });
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

const shot = (name: string) => page.screenshot({ path: join(pictures, `${name}.png`), fullPage: true });
const field = (name: string) => page.getByLabel(name, { exact: true });
const button = (name: string | RegExp) => page.getByRole('button', { name });
const answer = (words: RegExp) => page.getByRole('heading', { level: 1, name: words }).waitFor();
const action = (n: number) => page.getByRole('region', { name: new RegExp(`^Action ${n}`) });
const cases = () => page.getByRole('region', { name: 'Its test cases' });
const adopting = () => page.getByRole('region', { name: 'Adopt it' });
const accessible = () => allAccessible(page);
const fits = () => allFits(page);
async function adopt(by: string) {
  await adopting().getByLabel('Adopted by').fill(by);
  await adopting().getByLabel('On', { exact: true }).fill('2026-11-02');
  await adopting().getByRole('button', { name: 'Adopt it' }).click();
}

describe('the head of a shop with a prose directive in his hand', () => {
  it('writes what it is and whom it affects', async () => {
    await page.goto(`${program.url}/demo/directive`);
    await page.getByRole('link', { name: 'Write a directive' }).click();
    await answer(/not whole yet: 6 things are still to do/);
    await accessible();
    for (const [name, value] of Object.entries({
      Number: 'W-31',
      Title: 'Attach fitting of the inboard spar',
      Authority: 'Air Safety Board (invented)',
      'Text read at': 'Notice W-31, page 2',
      Issued: '2026-09-01',
      'Effective from': '2026-10-01',
    }))
      await field(name).fill(value);
    await field('How well known').selectOption('invented');
    await button('Add a model').click();
    await field('Model').first().fill('W4-T');
    await button('Only some serials').click();
    await field('From').fill('0600');
    await field('To').fill('0700');
  });

  it('types the formula with the keyboard: names are completed, the error has its place, the value is there at once', async () => {
    await action(1).getByLabel('What is to be done').fill('Look at the attach fitting');
    await action(1).getByLabel('It looks at').fill('inboard spar');
    await action(1).getByLabel('Short name').fill('first look');
    await action(1).getByRole('button', { name: 'It counts by a formula of its own' }).click();
    await action(1).getByLabel('What the figure is called').fill('counted landings');
    const formula = action(1).getByLabel('Formula');
    await formula.pressSequentially('landings.tot');
    await page.keyboard.press('Enter');
    await formula.pressSequentially(' + 2.0 * tow');
    await page.getByRole('option', { name: /landings\.tow/ }).waitFor();
    await page.keyboard.press('Escape');
    await action(1).getByText('^ here').waitFor();
    await page.keyboard.press('Backspace');
    await page.keyboard.press('w');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Tab');
    await expect.poll(() => formula.inputValue()).toBe('landings.total + 2.0 * landings.tow');
    await expect.poll(() => formula.evaluate((e) => e === document.activeElement)).toBe(true);
    await page.getByLabel('Values shown for').selectOption({ label: 'ZQ-LMB, W4-T' });
    await action(1)
      .getByText(/Left inboard spar/)
      .waitFor();
    await action(1)
      .getByText(/^\d.\d{3} to \d.\d{3} landings$/)
      .waitFor();
    await accessible();
  });

  it('says the limits as sentences, and the second action that a finding starts', async () => {
    await action(1).getByRole('button', { name: 'Say when it is first due' }).click();
    await action(1).getByLabel('What is counted').selectOption('counted');
    await action(1).getByLabel('Figure', { exact: true }).fill('8 000');
    await action(1)
      .getByRole('button', { name: /whichever comes first/ })
      .click();
    await action(1).getByLabel('Figure', { exact: true }).nth(1).fill('24');
    await action(1).getByRole('button', { name: 'It is done again and again' }).click();
    await action(1).getByLabel('Figure', { exact: true }).nth(2).fill('600');
    await button('Add an action').click();
    await action(2).getByLabel('What is to be done').fill('Replace the fitting');
    await action(2).getByLabel('It is to').selectOption('replace');
    await action(2).getByLabel('It looks at').fill('inboard spar');
    await action(2).getByLabel('Short name').fill('replace fitting');
    await action(2).getByRole('button', { name: 'A finding of another action starts it' }).click();
    await action(2).getByLabel('Finding').fill('crack');
    await action(2).getByRole('button', { name: 'Say when it is first due' }).click();
    await action(2).getByLabel('What is counted').selectOption('before_further_flight');
    await page.getByText('It starts when first look finds "crack".').waitFor();
    await page.getByText(/whichever comes first: 8 000 counted landings; 24 months after the effective date/).waitFor();
  });

  it('takes a case from an aircraft: one that fails is told, and stands in the way of adopting', async () => {
    await cases().getByLabel('Figures of ZQ-LMB for').selectOption('first_look');
    await cases().getByRole('button', { name: 'Add a case from ZQ-LMB' }).click();
    await cases().getByText('2 added: say what must come out.').waitFor();
    for (const n of [0, 1]) await cases().getByLabel('Must stand as').nth(n).selectOption('not affected');
    await cases().getByRole('button', { name: 'Add a case', exact: true }).click();
    await cases().getByLabel('Case', { exact: true }).last().fill('no crack was found');
    await cases().getByLabel('Action', { exact: true }).last().selectOption('replace_fitting');
    await cases().getByLabel('Must stand as').last().selectOption('not affected');
    await answer(/The rule reads, but 2 of 3 cases do not come out as written/);
    await expect.poll(() => adopting().getByRole('button', { name: 'Adopt it' }).isDisabled()).toBe(true);
    await adopting().getByText('2 of 3 cases do not come out as written.').waitFor();
    const came = await cases().locator('summary small').allInnerTexts();
    for (const n of [0, 1]) {
      const standing = /as written: ([a-z ]+), counts/.exec(came[n]!)?.[1];
      await cases().getByLabel('Must stand as').nth(n).selectOption(standing!);
    }
    await answer(/W-31 issue 1 is whole, and all its 3 cases come out as written/);
    await accessible();
    await shot('directive-write');
  });

  it('chooses a problem and stands in its field', async () => {
    await field('Title').fill('');
    await page.getByRole('complementary').getByRole('button', { name: 'Title' }).click();
    await expect.poll(() => field('Title').evaluate((e) => e === document.activeElement)).toBe(true);
    await expect.poll(() => field('Title').getAttribute('aria-invalid')).toBe('true');
    await field('Title').fill('Attach fitting of the inboard spar');
  });

  it('loses nothing by a reload, and a second tab sees what the first one wrote', async () => {
    await page.getByText(/^Kept in this browser at/).waitFor();
    await page.reload();
    await answer(/W-31 issue 1 is whole/);
    const second = await context.newPage();
    await second.goto(page.url());
    await second.getByLabel('Why it was issued').fill('A fitting was found cracked.');
    await page.getByText(/Another tab of this browser wrote to this draft/).waitFor();
    await button('Take over what it wrote').click();
    await expect.poll(() => field('Why it was issued').inputValue()).toBe('A fitting was found cracked.');
    await second.close();
  });

  it('fits a tablet', async () => {
    await page.setViewportSize(TABLET);
    await fits();
    await shot('tablet-directive-write');
    await page.setViewportSize(DESKTOP);
  });

  it('keeps the draft on the server, tries it on the fleet, adopts it, and the standings change', async () => {
    await page.getByLabel('Your name').fill('M. Orne');
    await button('Keep the draft on the server').click();
    await page.waitForURL(/\/demo\/directive\/W-31\/write$/);
    await page.getByText(/Taken up from the draft that M. Orne kept on the server/).waitFor();
    await answer(/W-31 issue 1 is whole/);
    await button('Try it on the fleet').click();
    await page.getByRole('heading', { level: 2, name: /\d+ of 12 affected/ }).waitFor();
    await accessible();
    await shot('directive-tried');
    await adopt('M. Orne');
    await page.waitForURL(/\/demo\/directive\/W-31$/);
    await answer(/W-31 asks for 2 actions/);
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A0612`);
    await page
      .getByText(/W-31 issue 1/)
      .first()
      .waitFor();
  });
});

describe('a fast hand at a slow page', () => {
  /** Every timer and frame of the page comes this much later. */
  const LATE_MS = 150;
  let slow: Page;
  const held = () => slow.evaluate(() => document.activeElement?.getAttribute('data-place'));
  const first = () => slow.getByRole('region', { name: /^Action 1/ });

  it('types on where it was, and the caret does not jump back', async () => {
    slow = await (await browser.newContext({ viewport: DESKTOP })).newPage();
    await slow.addInitScript((late) => {
      const [timer, frame] = [window.setTimeout.bind(window), window.requestAnimationFrame.bind(window)];
      window.requestAnimationFrame = (then) => timer(() => frame(then), late) as unknown as number;
      window.setTimeout = ((then: () => void, ms = 0) => timer(then, ms + late)) as unknown as typeof setTimeout;
    }, LATE_MS);
    await slow.goto(`${program.url}/demo/directive/new`);
    await first().getByRole('button', { name: 'It counts by a formula of its own' }).click();
    const called = first().getByLabel('What the figure is called');
    await expect.poll(() => called.evaluate((e) => e === document.activeElement)).toBe(true);
    await called.fill('counted landings');
    const formula = first().getByLabel('Formula');
    await formula.pressSequentially('landings.tot', { delay: 30 });
    await slow.keyboard.press('Enter');
    await slow.keyboard.type(' + 2.0 * landings.to', { delay: 30 });
    await slow.keyboard.press('Tab');
    await expect.poll(() => formula.inputValue()).toBe('landings.total + 2.0 * landings.total');
    expect(await called.inputValue()).toBe('counted landings');
    await slow.waitForTimeout(3 * LATE_MS);
    expect(await held()).toBe('actions.0.counts.expression');
  });

  it('completes no other word than the one the names were offered for', async () => {
    const formula = first().getByLabel('Formula');
    await formula.fill('hours.total + landings.t');
    await slow.getByRole('option', { name: /landings\.tow/ }).waitFor();
    await slow.keyboard.press('Home');
    await slow.getByRole('option').first().waitFor({ state: 'hidden' });
    await slow.keyboard.press('Tab');
    expect(await formula.inputValue()).toBe('hours.total + landings.t');
  });

  it('is led into a folded case, but not once it has gone on to another field', async () => {
    await slow.getByRole('button', { name: 'Add a case', exact: true }).click();
    await slow.locator('details.case > summary').click();
    await slow.getByLabel('Case', { exact: true }).waitFor({ state: 'detached' });
    const todo = slow
      .getByRole('complementary')
      .getByRole('button', { name: /^Case 1, / })
      .first();
    await todo.click();
    await expect.poll(held).toMatch(/^cases\.0\./);
    await slow.locator('details.case > summary').click();
    await slow.getByLabel('Case', { exact: true }).waitFor({ state: 'detached' });
    await todo.evaluate((e: HTMLElement) => {
      e.click();
      document.querySelector<HTMLElement>('[data-place=title]')?.focus();
    });
    await slow.getByLabel('Case', { exact: true }).waitFor();
    await slow.waitForTimeout(3 * LATE_MS);
    expect(await held()).toBe('title');
    await slow.context().close();
  });
});

describe('what becomes of it', () => {
  it('a next issue starts from the one in force and shows in words what it changes', async () => {
    await page.goto(`${program.url}/demo/directive/W-31`);
    await page.getByRole('link', { name: 'Write the next issue' }).first().click();
    await answer(/W-31 issue 2 is not whole yet/);
    await field('Issued').fill('2026-10-20');
    await field('Effective from').first().fill('2026-11-01');
    await action(1).getByLabel('Figure', { exact: true }).nth(1).fill('12');
    await page.getByText('It now says').waitFor();
    await page
      .getByText(/12 months after the effective date/)
      .first()
      .waitFor();
    await button('Try it on the fleet').click();
    await page.getByText(/Against W-31 issue 1/).waitFor();
    await adopt('M. Orne');
    await page.waitForURL(/\/demo\/directive\/W-31$/);
    await page.getByRole('heading', { name: 'Changed against issue 1' }).waitFor();
    await accessible();
  });

  it('is exported as one document and imported into the own shop', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Export as one document' }).click(),
    ]);
    const text = await readFile((await download.path())!, 'utf8');
    expect(text).toContain('no crack was found');
    await page.goto(`${program.url}/own/directive`);
    await page
      .getByLabel('Drop a directive here, or choose its file')
      .setInputFiles({ name: download.suggestedFilename(), mimeType: 'application/yaml', buffer: Buffer.from(text) });
    await page.waitForURL(/\/own\/directive\/new$/);
    await answer(/W-31 issue 2 is whole, and all its 3 cases come out as written/);
    await adopt('A. Stranger');
    await page.waitForURL(/\/own\/directive\/W-31$/);
  });

  it('is withdrawn with name, day and reason, and no standing rests on it any more', async () => {
    await page.goto(`${program.url}/demo/directive/W-31`);
    await page.getByText('Withdraw W-31').first().click();
    await page.getByLabel('Withdrawn by').fill('M. Orne');
    await page.getByLabel('From', { exact: true }).fill('2026-11-20');
    await page.getByLabel('Reason').fill('Withdrawn by the authority.');
    await button('Withdraw W-31').click();
    await page
      .getByText(/Withdrawn by the authority/)
      .first()
      .waitFor();
    await page.goto(`${program.url}/demo/directive`);
    await page.getByText('withdrawn').first().waitFor();
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A0612`);
    await page
      .getByText(/bites first/)
      .first()
      .waitFor();
    expect(
      await page
        .getByRole('table', { name: /standings/i })
        .getByText('W-31')
        .count(),
    ).toBe(0);
  });

  it('the program gone while typing: a sentence, and nothing is lost', async () => {
    await page.goto(`${program.url}/demo/directive/new`);
    await answer(/not whole yet/);
    await program.stop('SIGKILL');
    await field('Title').fill('Typed while the program was gone');
    await page.getByText(/nothing is checked at the moment/).waitFor();
    await field('Title').blur();
    const kept = () => page.evaluate(() => localStorage.getItem('sparwright.directive.demo.new'));
    await expect.poll(kept).toContain('Typed while the program was gone');
    await page.getByText(/^Kept in this browser at/).waitFor();
    await page.goto('about:blank');
    await program.start();
  });

  it('no page said an error', () => {
    expect(said.filter((s) => !/status of 4\d\d|ERR_CONNECTION_REFUSED/.test(s))).toEqual([]);
  });
});
