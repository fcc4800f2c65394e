import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { verifyBackupFile } from '../store/index.ts';
import { accessible as allAccessible } from './checks.ts';
import { openBrowser, Program } from './program.ts';

const [here, elsewhere] = [new Program(), new Program()];
let browser: Browser;
let page: Page;
beforeAll(async () => {
  await here.start();
  await elsewhere.start();
  browser = await openBrowser();
  page = await (await browser.newContext({ viewport: { width: 820, height: 1180 }, acceptDownloads: true })).newPage();
});
afterAll(async () => {
  await browser?.close();
  await here.end();
  await elsewhere.end();
});

const accessible = () => allAccessible(page);

it('a copy is kept from the start page and comes back on another machine', async () => {
  await page.goto(here.url);
  await page.getByRole('button', { name: 'Open the demo' }).click();
  await page.waitForURL(/demo/);
  await page.goto(here.url);
  const link = page.getByRole('link', { name: 'Keep a copy' });
  await link.focus();
  await accessible();
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  expect(download.suggestedFilename()).toMatch(/^sparwright-\d{4}-\d\d-\d\d\.jsonl\.gz$/);
  const words = await page.getByRole('status').filter({ hasText: 'Handed to the browser' }).textContent();
  expect(words).toContain(download.suggestedFilename());
  const file = join(here.folder, 'kept.jsonl.gz');
  await download.saveAs(file);
  const copy = await verifyBackupFile(file);
  expect(copy.tail.shops.find((s) => s.id === 'demo')?.entries).toBeGreaterThan(100);
  const entries = copy.tail.shops.find((s) => s.id === 'demo')?.entries ?? 0;
  expect(words?.replaceAll('\u202f', '')).toContain(`${entries} entries of`);

  await page.goto(elsewhere.url);
  await page.getByRole('button', { name: 'Bring a copy back' }).waitFor();
  await accessible();
  const choose = page.getByLabel('Copy to bring back');
  await choose.setInputFiles({ name: 'other.gz', mimeType: 'application/gzip', buffer: Buffer.from('Date,Hours') });
  await page.getByText('This copy is damaged', { exact: false }).waitFor();
  await choose.setInputFiles(file);
  await page.getByRole('heading', { name: 'Keep a copy' }).waitFor();
  await page.goto(`${elsewhere.url}/demo/fleet`);
  await page.getByText('ZQ-LMB').first().waitFor();
});
