import { existsSync, mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, Program } from './program.ts';

/** The manual shows the program as it is: `UPDATE_MANUAL=1` takes its pictures anew. */
const folder = join(process.cwd(), 'docs', 'manual');
const update = process.env.UPDATE_MANUAL === '1';
const text = readFileSync(join(process.cwd(), 'docs', 'manual.md'), 'utf8');
const named = [...text.matchAll(/!\[[^\]]+\]\(manual\/([a-z-]+)\.png\)/g)].map((m) => m[1]!);
const program = new Program();
let browser: Browser;
let page: Page;

beforeAll(async () => {
  mkdirSync(folder, { recursive: true });
  await program.start();
  browser = await openBrowser();
  page = await (
    await browser.newContext({ viewport: { width: 1180, height: 900 }, reducedMotion: 'reduce', locale: 'en-GB' })
  ).newPage();
  await page.request.post(`${program.url}/api/demo`, { data: {}, headers: { origin: program.url } });
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

const aircraft = 'demo/aircraft/aircraft%3A0612';
interface Shown {
  readonly at: string;
  readonly height: number;
  /** Words of the page that the manual quotes or speaks of. */
  readonly words: readonly RegExp[];
  readonly before?: () => Promise<void>;
}
const SHOWN: Readonly<Record<string, Shown>> = {
  start: { at: '', height: 700, words: [/Answer a caller/, /Drop a logbook/, /Open the demo/, /copy/i] },
  caller: { at: 'own/import/caller', height: 760, words: [/Six questions/, /1\. What is the total/, /6\. Which kits/] },
  aircraft: { at: aircraft, height: 900, words: [/treat as/i, /could become/, /why/, /Letter to the owner/] },
  fleet: {
    at: 'demo/fleet',
    height: 900,
    words: [/Search/, /Treat as/, /Type/, /Base/, /Keys:/, /Esc/],
    before: () => page.locator('.computing:empty').waitFor({ state: 'attached', timeout: 60_000 }),
  },
  due: { at: 'demo/fleet/due', height: 800, words: [/PDF/, /CSV/, /XLSX/, /Show these days/] },
  readings: { at: 'demo/fleet/readings', height: 760, words: [/Request/, /Reply/] },
  directive: {
    at: 'demo/directive/W-14/write',
    height: 900,
    words: [/Read back/, /Its test cases/, /Try it on the fleet/, /Adopt it/, /Adopted by/],
  },
  papers: { at: `${aircraft}/papers`, height: 900, words: [/The page/, /What it says/, /As known on/, /correct/] },
  compliance: {
    at: `${aircraft}/compliance`,
    height: 800,
    words: [/Method/, /An alternative means/, /A ferry permit/],
  },
  usage: { at: `${aircraft}/usage`, height: 900, words: [/What an hour of each use does/, /Lengths and stresses/] },
  'usage-write': {
    at: 'demo/usage/whimbrel-w4-lower-spar-cap/write',
    height: 900,
    words: [/Aeroplane/, /Paste/i, /source/i],
  },
  growth: {
    at: `${aircraft}/growth`,
    height: 1150,
    words: [/How a crack would grow/, /What matters most/, /scatter/i],
  },
  'map-write': {
    at: 'demo/teardown/maps/whimbrel-w4-wing/write',
    height: 1180,
    words: [/The structure map|structure map/, /Undo the last change/],
  },
  teardown: {
    at: 'demo/teardown/jobs/zq-lmb-right-inboard-spar',
    height: 1150,
    words: [/While it is open/, /Gates/, /Steps, in their order/, /next: /],
    before: () => page.getByText(/are being computed/).waitFor({ state: 'detached', timeout: 60_000 }),
  },
  schedule: {
    at: 'demo/teardown/jobs/zq-lmb-right-inboard-spar/schedule',
    height: 1150,
    words: [/Critical chain/, /Jigs/, /Hands/, /No schedule ends earlier than/],
  },
  wing: {
    at: 'demo/teardown/jobs/zq-lmb-right-inboard-spar/wing',
    height: 900,
    words: [/What is next/, /Your name/, /Next: /],
  },
  'what-if': {
    at: `${aircraft}/what-if`,
    height: 900,
    words: [/Another flying rate/, /Another use/, /A part moved/, /A paper found/],
    before: async () => {
      await page.getByLabel('Hours a year').fill('200');
      await page.getByRole('button', { name: 'Show it at this rate' }).click();
      await page.locator('.answered table').first().waitFor();
    },
  },
};

describe('the manual', () => {
  it('names the pictures there are, and all of them', () => {
    expect([...named].sort()).toEqual(Object.keys(SHOWN).sort());
    if (update) return;
    expect(readdirSync(folder).sort()).toEqual(named.map((n) => `${n}.png`).sort());
    const sizes = named.map((n) => statSync(join(folder, `${n}.png`)).size);
    expect(Math.min(...sizes)).toBeGreaterThan(5_000);
    expect(sizes.reduce((a, b) => a + b, 0)).toBeLessThan(2_400_000);
  });

  it.each(Object.entries(SHOWN))('%s: the page opens and says what the manual says it says', async (name, of) => {
    await page.goto(`${program.url}/${of.at}`);
    const main = page.getByRole('main');
    await main.getByRole('heading', { level: 1 }).first().waitFor();
    for (const word of of.words) await main.getByText(word).first().waitFor({ state: 'attached' });
    await of.before?.();
    await page.evaluate(() => document.fonts.ready);
    await page.evaluate(() => window.scrollTo(0, 0));
    if (update)
      await page.screenshot({
        path: join(folder, `${name}.png`),
        clip: { x: 0, y: 0, width: 1180, height: of.height },
        animations: 'disabled',
      });
    expect(existsSync(join(folder, `${name}.png`))).toBe(true);
  });

  it('names every page that it shows with its picture, in the program too', async () => {
    await page.goto(program.url);
    await page.getByRole('navigation', { name: 'To read' }).getByRole('link', { name: 'The manual' }).click();
    const pictures = page.locator('.manual img');
    await pictures.first().waitFor();
    expect(await pictures.count()).toBe(named.length);
    for (const picture of await pictures.all()) {
      await picture.scrollIntoViewIfNeeded();
      await expect.poll(() => picture.evaluate((i) => (i as HTMLImageElement).naturalWidth)).toBe(1180);
    }
    const gone = await page.request.get(`${program.url}/api/manual/other.png`);
    expect(gone.status()).toBe(404);
    for (const size of [
      { width: 1360, height: 900 },
      { width: 820, height: 1180 },
    ]) {
      await page.setViewportSize(size);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(wide).toBeLessThanOrEqual(0);
    }
    const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag22aa']).analyze();
    expect(violations.map((v) => `${v.id}: ${v.nodes[0]?.html}`)).toEqual([]);
  });
});
