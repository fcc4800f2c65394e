import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, Program } from './program.ts';
import { sceneText } from './scene-text.ts';

/**
 * Every story as a picture. The gate is the scene as text: what a reader is told, and every mark of a drawing.
 * Pixels are compared only on the browser version that made them. `UPDATE_PICTURES=1` writes both anew, to be read
 * before they are committed.
 */
const kept = join(process.cwd(), 'e2e', 'pictures');
const pixelsFile = join(kept, 'pixels.json');
const shown = join(process.cwd(), '.sparwright', 'pictures', 'stories');
const update = process.env.UPDATE_PICTURES === '1';

interface Pixels {
  readonly browser: string;
  readonly sha256: Readonly<Record<string, string>>;
}
const program = new Program();
let browser: Browser;
let page: Page;
let parts: (readonly [part: string, address: string])[];
const names: string[] = [];
let whole = false;
const asked: string[] = [];
const pixels: Pixels = existsSync(pixelsFile)
  ? JSON.parse(readFileSync(pixelsFile, 'utf8'))
  : { browser: 'none', sha256: {} };
const made: Record<string, string> = {};

beforeAll(async () => {
  mkdirSync(shown, { recursive: true });
  mkdirSync(kept, { recursive: true });
  await program.start();
  browser = await openBrowser();
  page = await browser.newPage({ viewport: { width: 1360, height: 900 }, reducedMotion: 'reduce', timezoneId: 'UTC' });
  // The pages' own clock stands still, so that a story shows the same day for ever.
  await page.clock.setFixedTime(new Date('2026-11-25T09:00:00Z'));
  // Stories are given their data: whatever they ask of the server would not be the same twice.
  await page.route('**/api/**', (route) => {
    asked.push(route.request().url());
    return route.abort();
  });
  await page.goto(`${program.url}/stories`);
  await page.locator('[data-story]').first().waitFor();
  parts = await page
    .locator('main > ul a')
    .evaluateAll((all) => all.map((a) => [a.textContent ?? '', (a as HTMLAnchorElement).href] as const));
});
afterAll(async () => {
  await browser?.close();
  await program.end();
});

/** A page whose program was built anew meanwhile is loaded once more. */
async function open(part: string, address: string): Promise<void> {
  const first = page.locator(`[data-story^="${part}, "]`).first();
  await page.goto(address);
  await first.waitFor({ timeout: 10_000 }).catch(() => page.reload());
  await first.waitFor();
}
/** A long table draws the rows in sight once it knows how high they are: its text counts when it stands still. */
async function settled(story: Locator): Promise<string> {
  let text = await sceneText(story);
  if ((await story.locator('.long').count()) === 0) return text;
  for (let tries = 0; tries < 20; tries++) {
    await page.waitForTimeout(400);
    const again = await sceneText(story);
    if (again === text) break;
    text = again;
  }
  return text;
}
const fileOf = (name: string) => `${name.replaceAll(/[^a-z0-9]+/gi, '-').toLowerCase()}.txt`;

describe('stories', () => {
  it('say and draw what they did', async () => {
    const changed: string[] = [];
    for (const [part, address] of parts) {
      await open(part, address);
      await page.evaluate(() => document.fonts.ready);
      for (const story of await page.locator('[data-story]').all()) {
        const name = (await story.getAttribute('data-story'))!;
        names.push(name);
        const text = await settled(story);
        const file = join(kept, fileOf(name));
        if (update) writeFileSync(file, text);
        const before = existsSync(file) ? readFileSync(file, 'utf8') : '';
        if (before !== text) changed.push(`${name}\n${difference(before, text)}`);
        const png = await story.screenshot({ animations: 'disabled', caret: 'hide' });
        writeFileSync(join(shown, fileOf(name).replace('.txt', '.png')), png);
        made[name] = createHash('sha256').update(png).digest('hex');
      }
    }
    whole = true;
    expect(changed).toEqual([]);
  });

  it('bear names of their own', () => {
    expect(names.length).toBeGreaterThan(150);
    expect(new Set(names.map(fileOf)).size).toBe(names.length);
  });

  it('ask nothing of the server', () => expect(asked).toEqual([]));

  it('keep no text of a story that is gone', () => {
    const wanted = new Set(names.map(fileOf));
    expect(whole).toBe(true);
    const gone = readdirSync(kept).filter((f) => f.endsWith('.txt') && !wanted.has(f));
    if (update) for (const f of gone) rmSync(join(kept, f));
    expect(update ? [] : gone).toEqual([]);
  });

  it('look as they did, on the browser version that made the pictures', () => {
    expect(whole).toBe(true);
    const here = browser.version();
    if (update) writeFileSync(pixelsFile, `${JSON.stringify({ browser: here, sha256: made }, null, 2)}\n`);
    const differing = Object.keys(made).filter((n) => made[n] !== pixels.sha256[n]);
    if (!update && here === pixels.browser) expect(differing).toEqual([]);
    else process.stdout.write(`pixels: not compared, made on ${pixels.browser}, this is ${here}\n`);
    expect(Object.keys(made)).toEqual(names);
  });
});

function difference(before: string, after: string): string {
  const [a, b] = [before.split('\n'), after.split('\n')];
  const at = b.findIndex((line, i) => line !== a[i]);
  return `line ${at + 1}: was "${a[at] ?? 'nothing'}", is "${b[at] ?? 'nothing'}"`;
}
