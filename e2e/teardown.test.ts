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
const listen = (p: Page) => {
  p.on('console', (m) => m.type() === 'error' && said.push(m.text()));
  p.on('pageerror', (e) => said.push(e.message));
};

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  await program.start();
  browser = await openBrowser();
  page = await (await browser.newContext({ viewport: DESKTOP, acceptDownloads: true })).newPage();
  listen(page);
  await page.request.post(`${program.url}/api/demo`, { data: {} });
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

const shot = (name: string) => page.screenshot({ path: join(pictures, `${name}.png`) });
const answer = (words: RegExp, of = page) => of.getByRole('heading', { level: 1, name: words }).waitFor();
const part = (name: string | RegExp) => page.getByRole('region', { name });
const press = async (name: string | RegExp, of = page) => {
  await of.getByRole('button', { name, exact: typeof name === 'string' }).focus();
  await of.keyboard.press('Enter');
};
/** At both widths: nothing that the rules of access find, and nothing that scrolls sideways. */
async function atBothWidths(): Promise<void> {
  await accessible(page);
  await fits(page);
  await page.setViewportSize(TABLET);
  await fits(page);
  await accessible(page);
  await page.setViewportSize(DESKTOP);
}
const JOB = '/demo/teardown/jobs/zq-lmb-right-inboard-spar';
const steps = async () =>
  (await page.request.get(`${program.url}/api/shops${JOB}/steps`)).json() as Promise<{
    last: number;
    now: number;
    steps: { operation: string | null; title: string; done: boolean }[];
  }>;

describe('a shop lead plans a teardown, by keyboard', () => {
  it('from the aircraft to the question; the first plan stands beside it as soon as a part is chosen', async () => {
    await page.goto(`${program.url}/demo/aircraft/aircraft%3A0612`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    const path = page.getByRole('navigation', { name: 'Path' });
    await path.getByRole('link', { name: 'Teardown', exact: true }).nth(1).focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/aircraft%3A0612\/teardown$/);
    await page.getByRole('link', { name: 'Plan a teardown of ZQ-LMB' }).waitFor();
    await atBothWidths();
    await page.getByRole('link', { name: 'Plan a teardown of ZQ-LMB' }).focus();
    await page.keyboard.press('Enter');
    await answer(/not whole yet: 1 thing/);
    await part('What has to come off').getByLabel('Part', { exact: true }).focus();
    await part('What has to come off')
      .getByLabel('Part', { exact: true })
      .selectOption({ label: 'Right inboard spar' });
    await answer(/is whole/);
    const beside = page.getByRole('complementary', { name: 'Its answer' });
    await beside.getByRole('heading', { level: 2, name: /To replace the right inboard spar/ }).waitFor();
    await page.getByRole('img', { name: /right wing from above/i }).waitFor();
    await page.getByText('Left empty it is "ZQ-LMB, replace right inboard spar"').waitFor();
  });

  it('a choice of parts, a look that is not wanted, a quote; nonsense is told at its place', async () => {
    const what = part('What has to come off');
    await press('Add parts of which any one will do');
    const any = what.getByRole('group', { name: 'Any one of these' });
    await any.getByLabel('Part', { exact: true }).nth(0).selectOption({ label: 'Right fuel tank' });
    await any.getByLabel('What is done to it').nth(0).selectOption('reach');
    await any.getByLabel('Part', { exact: true }).nth(1).selectOption({ label: 'Right wing tip' });
    await any.getByLabel('What is done to it').nth(1).selectOption('reach');
    await part('While it is open')
      .getByText(/Looks and small jobs on offer/)
      .click();
    await part('While it is open').getByLabel('Right fuel hose renewed').selectOption('unwanted');
    await press('Quote it');
    await part('The quote')
      .getByLabel(/^Valid for/)
      .fill('a month');
    await part('The quote')
      .getByLabel(/^Stop and call above/)
      .fill('34 000');
    await page.keyboard.press('Tab');
    await part('The quote').locator('.wrong', { hasText: '"a month"' }).waitFor();
    await answer(/not whole yet: 1 does not fit/);
    await accessible(page);
    await part('The quote')
      .getByLabel(/^Valid for/)
      .fill('45');
    await answer(/is whole/);
    await atBothWidths();
    await shot('teardown-new');
  });

  it('keeps it; what was written stands in the document', async () => {
    await part('Keep it').getByLabel('Kept by').fill('M. Orne');
    await press('Keep it');
    await page.waitForURL(/\/demo\/teardown\/jobs\/zq-lmb-replace-right-inboard-spar[^/]*$/);
    await answer(/replace the right inboard spar/i);
    const name = page.url().split('/').at(-1);
    const kept = await page.request.get(`${program.url}/api/shops/demo/teardown/jobs/${name}/document`);
    expect(await kept.json()).toMatchObject({
      aircraft: 'aircraft:0612',
      map: { kept: 'whimbrel-w4-wing' },
      side: 'right',
      targets: [{ part: 'right-inboard-spar', work: 'replace' }, { any: [{ work: 'reach' }, { work: 'reach' }] }],
      quote: { valid_days: 45, stop_and_call_cents: 3_400_000 },
    });
    await page.getByRole('link', { name: 'Change the job' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText(/^Starts from "ZQ-LMB, replace right inboard spar/).waitFor();
    await expect
      .poll(() => part('What has to come off').getByLabel('Part', { exact: true }).first().inputValue())
      .toBe('right-inboard-spar');
  });

  it('every page of a job says its sentence, has its file and fits', async () => {
    for (const at of ['', '/schedule', '/shopping', '/quote', '/cards']) {
      await page.goto(`${program.url}${JOB}${at}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await expect.poll(() => page.getByText(/are being computed/).count(), { timeout: 30_000 }).toBe(0);
      await fits(page);
      await accessible(page);
      await page.setViewportSize(TABLET);
      await fits(page);
      await page.setViewportSize(DESKTOP);
      const href = await page.getByRole('link', { name: /^PDF/ }).getAttribute('href');
      const pdf = await page.request.get(`${program.url}${href}`);
      expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-');
      await shot(`teardown${at.replace('/', '-')}`);
    }
    for (const at of ['/demo/teardown', '/demo/teardown/calendar']) {
      await page.goto(`${program.url}${at}`);
      await page
        .getByRole('link', { name: /ZQ-LMB|PDF/ })
        .first()
        .waitFor();
      await atBothWidths();
    }
    await page.goto(`${program.url}/own/teardown`);
    await page.getByRole('link', { name: 'Plan a teardown' }).waitFor();
  });
});

describe('a mechanic at the wing', () => {
  const name = () => page.getByLabel('Your name');
  const run = () => page.getByRole('slider');
  const pressed = (title: string | RegExp) => page.getByRole('heading', { level: 2, name: title }).waitFor();

  it('runs the teardown back and forth by keyboard; what is off fades, what is next has its name', async () => {
    await page.setViewportSize(TABLET);
    await page.goto(`${program.url}${JOB}/wing`);
    await answer(/Next: .*right rear attach bolt/i);
    await run().focus();
    await page.keyboard.press('Home');
    await pressed(/Receiving inventory/);
    await page.keyboard.press('ArrowRight');
    await pressed(/Defuel/);
    expect(await run().getAttribute('aria-valuetext')).toMatch(/^Step 2 of \d+: Defuel/);
    await press('What is next');
    await pressed(/right rear attach bolt/i);
    await page.locator('svg.wing text', { hasText: /right rear attach bolt/i }).waitFor();
    await page.locator('svg.wing .seen.off').first().waitFor({ state: 'attached' });
    for (const target of await page.locator('.wing-desk button:visible, .wing-desk input:visible').all()) {
      const box = await target.boundingBox();
      expect(box?.height).toBeGreaterThanOrEqual(48);
    }
    await fits(page);
    await accessible(page);
    await shot('teardown-wing');
  });

  it('a record bears a name, which this machine remembers; nonsense is refused and stays', async () => {
    await press('Done');
    await page.getByText('Every record bears a name').waitFor();
    await expect.poll(() => name().evaluate((e) => e === document.activeElement)).toBe(true);
    await page.keyboard.insertText('B. Aske');
    await page.getByLabel('Minutes').fill('an hour');
    await press('Done');
    await page.getByText(/^Minutes are a number from 0/).waitFor();
    await accessible(page);
    expect(await page.getByLabel('Minutes').inputValue()).toBe('an hour');
    await page.getByLabel('Minutes').fill('25');
    await press('Done');
    await answer(/Next: Look: .*rear attach fitting/i);
    await page.reload();
    await answer(/Next: Look: .*rear attach fitting/i);
    expect(await name().inputValue()).toBe('B. Aske');
  });

  it('a record is corrected by keyboard, with a reason; the new entry says which one it replaces', async () => {
    await run().focus();
    await page.keyboard.press('ArrowLeft');
    const record = page.locator('details', { hasText: /^Correct entry \d+/ });
    await record.locator('summary').focus();
    await page.keyboard.press('Enter');
    await record.getByLabel('Its minutes').fill('a while');
    await record.getByText(/^Minutes are a number/).waitFor();
    await record.getByLabel('Its minutes').fill('35');
    await record.getByLabel('Why it is corrected').fill('Read from the wrong line');
    await accessible(page);
    await fits(page);
    await press(/^Correct entry \d+$/);
    await page.getByText(/Corrected: entry \d+ takes the place of entry \d+/).waitFor();
    const { work } = (await steps()) as unknown as { work: { record: { minutes?: number }; because: string }[] };
    expect(work.at(-1)).toMatchObject({ record: { minutes: 35 }, because: 'Read from the wrong line' });
    await press('What is next');
  });

  it('a finding that asks for nothing more is recorded, and it is said that the plan did not change', async () => {
    await press('Finding');
    await page.getByLabel('What was found').fill('Scratch, polished out');
    await press('Record the finding');
    await page.getByText('Recorded, and the plan did not change').waitFor();
    await page.getByText(/^Entry \d+: Finding: Look: .*: Scratch, polished out$/).waitFor();
    await accessible(page);
    await press('Seen');
    await run().focus();
    await page.keyboard.press('ArrowLeft');
    await page.getByText('Recorded by mistake').focus();
    await page.keyboard.press('Enter');
    await page.getByLabel('Reason').fill('It was on the other wing');
    await press('Take it back');
    await page.getByText(/^Taken back, entry \d+\.$/).waitFor();
    await answer(/Next: Look: .*rear attach fitting/i);
  });

  it('a finding makes the plan new, and says what came on it', async () => {
    await press('Finding');
    await page.getByLabel('What was found').fill('Crack of 2 mm at the lower bolt hole');
    await press('Name a part');
    await page.getByLabel('Part', { exact: true }).selectOption({ label: 'Right aft rib 4' });
    await page.getByLabel('What is to be done').selectOption('replace');
    await accessible(page);
    await press('Record the finding');
    await page.getByText('The plan is new.').waitFor();
    await page.getByText(/^\d+ steps? more:$/).waitFor();
    await accessible(page);
    await fits(page);
    await shot('teardown-finding');
    await press('Seen');
    await expect.poll(() => page.getByText('The plan is new.').count()).toBe(0);
  });

  it('two at the same wing: what the other records is shown, nothing typed is lost', async () => {
    const other = await (await browser.newContext({ viewport: TABLET })).newPage();
    listen(other);
    await other.goto(`${program.url}${JOB}/wing`);
    await other.getByLabel('Your name').fill('T. Vale');
    const { steps: all, now } = await steps();
    const title = all[now]!.title;
    await page.getByLabel('Minutes').fill('17');
    // The first page is told nothing new while the other records.
    await page.route('**/jobs/*/steps*', (route) => route.abort());
    await press('Done', other);
    await expect.poll(async () => (await steps()).steps[now]!.done).toBe(true);
    await press('Done');
    await page.getByText(/Meanwhile T\. Vale recorded/).waitFor();
    await page.unroute('**/jobs/*/steps*');
    await page.getByText('Recorded meanwhile by others:').waitFor();
    await page.getByText(`Done: ${title}`).first().waitFor();
    await accessible(page);
    await press(/^Leave it out/);
    await press('Seen');
    await answer(new RegExp(`Next: (?!${title.replaceAll(/[^\w ]/g, '.')})`));
    await run().focus();
    await page.keyboard.press('ArrowLeft');
    await other.close();
  });

  it('the program gone: said, kept on this machine, sent when it answers again', async () => {
    await page.goto(`${program.url}${JOB}/wing`);
    await answer(/Next: /);
    const { now, steps: all } = await steps();
    await program.stop('SIGKILL');
    await press('Done');
    await page.getByText('This machine keeps them and sends them').waitFor();
    await page.locator('.waiting li', { hasText: `Done: ${all[now]!.title}` }).waitFor();
    await accessible(page);
    await press('Done');
    await page.getByText('These 2 are not recorded yet.').waitFor();
    const kept = await page.evaluate(() =>
      localStorage.getItem('sparwright.teardown-work.demo.zq-lmb-right-inboard-spar'),
    );
    expect(JSON.parse(kept!).records).toHaveLength(2);
    const before = program.url;
    await program.start();
    expect(program.url).toBe(before);
    await expect.poll(() => page.getByText(/not recorded yet/).count(), { timeout: 30_000 }).toBe(0);
    await expect.poll(async () => (await steps()).steps.slice(now, now + 2).every((s) => s.done)).toBe(true);
  });

  it('no page said an error', () => {
    expect(said.filter((s) => !/status of 4\d\d|ERR_CONNECTION_REFUSED|ERR_FAILED/.test(s))).toEqual([]);
  });
});
