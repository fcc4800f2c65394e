import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

export const DESKTOP = { width: 1360, height: 900 };
export const TABLET = { width: 820, height: 1180 };

/** Nothing that the rules of WCAG 2.2 AA find, on the whole page or in one part of it. */
export async function accessible(page: Page, part?: string): Promise<void> {
  // What fades in is looked at when it is there: half-way its contrast is that of no reader's page.
  await page.evaluate(() => Promise.all(document.getAnimations().map((a) => a.finished.catch(() => undefined))));
  const axe = new AxeBuilder({ page });
  const { violations } = await (part ? axe.include(part) : axe)
    .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(violations.map((v) => `${v.id}: ${v.nodes[0]?.html}`)).toEqual([]);
}
/** The page never scrolls sideways. */
export async function fits(page: Page): Promise<void> {
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
}
