import { loadavg } from 'node:os';
import type { Page } from 'playwright-core';
import { openBrowser, Program } from '../e2e/program.ts';
import { preparedFleet } from './testing/prepared.ts';

/**
 * The fleet page in a browser, over 2,000 invented aircraft with stored answers: from the address to the first rows,
 * and from a key in the search to the next frame that is drawn. Printed; nothing is judged here.
 */
const AIRCRAFT = Number(process.env.SPARWRIGHT_BENCH_AIRCRAFT ?? 2000);
const LOOKS = 7;
const prepared = await preparedFleet(AIRCRAFT);
const program = new Program(prepared.folder);
const median = (of: readonly number[]): number => [...of].sort((a, b) => a - b)[Math.floor(of.length / 2)]!;
const say = (what: string, of: readonly number[]) =>
  console.log(
    `${what.padEnd(46)} median ${median(of).toFixed(1)} ms, longest ${Math.max(...of).toFixed(1)} ms of ${of.length}, load ${loadavg()[0]!.toFixed(1)}`,
  );

/** From the way to the page, taken within the program, to the frame that shows its rows. */
async function firstRows(page: Page): Promise<number> {
  await page.goto(`${program.url}/own/directive`);
  await page.getByRole('heading', { level: 1 }).first().waitFor();
  const link = page.getByRole('navigation', { name: 'Path' }).getByRole('link', { name: 'Fleet', exact: true });
  return link.evaluate(
    (a: HTMLElement) =>
      new Promise<number>((done) => {
        const from = performance.now();
        const look = () =>
          document.querySelector('tbody tr[data-row]') ? done(performance.now() - from) : requestAnimationFrame(look);
        a.click();
        requestAnimationFrame(look);
      }),
  );
}

/** Each key of the search: from its press until the frame after it has been drawn. */
async function keys(page: Page, words: readonly string[]): Promise<number[]> {
  await page.evaluate(() => {
    const kept: number[] = [];
    Object.assign(window, { kept });
    addEventListener(
      'keydown',
      () => {
        const from = performance.now();
        requestAnimationFrame(() => {
          const drawn = new MessageChannel();
          drawn.port1.onmessage = () => kept.push(performance.now() - from);
          drawn.port2.postMessage(null);
        });
      },
      true,
    );
  });
  await page.getByRole('searchbox').focus();
  for (const key of words) {
    await page.keyboard.press(key);
    await page.waitForTimeout(120);
  }
  return page.evaluate(() => (window as unknown as { kept: number[] }).kept);
}

try {
  await program.start();
  console.log(prepared.how);
  const browser = await openBrowser();
  const page = await browser.newPage({ viewport: { width: 1360, height: 900 } });
  // The loader of this script names functions by a helper that the page does not have.
  await page.addInitScript('globalThis.__name = (f) => f');
  const looks: number[] = [];
  for (let i = 0; i < LOOKS; i++) looks.push(await firstRows(page));
  say(`first rows of ${AIRCRAFT}`, looks);
  const words = [
    ...'zq-b fen',
    ...Array<string>(8).fill('Backspace'),
    ...'moor w-14',
    ...Array<string>(9).fill('Backspace'),
  ];
  say('a key in the search to the next frame', await keys(page, words));
  await browser.close();
} finally {
  await program.end();
}
