import type { Locator } from 'playwright-core';

/** What a part tells and draws, as text: its tree as a screen reader meets it, then each mark of its drawings, rounded. */
export async function sceneText(part: Locator): Promise<string> {
  const told = await part.ariaSnapshot();
  const marks = await part.evaluate((root) => {
    const round = (s: string) => s.replaceAll(/-?\d+\.\d+/g, (n) => String(Math.round(Number(n) * 10) / 10));
    const KEPT = ['x', 'y', 'x1', 'y1', 'x2', 'y2', 'cx', 'cy', 'r', 'width', 'height', 'd', 'points', 'text-anchor'];
    return [...root.querySelectorAll('svg *')].map((e) => {
      const named = KEPT.flatMap((k) => (e.hasAttribute(k) ? [`${k}=${round(e.getAttribute(k)!)}`] : []));
      const own = e.children.length === 0 ? (e.textContent ?? '').trim() : '';
      return [e.tagName, e.getAttribute('class') ?? '', ...named, own && JSON.stringify(own)].filter(Boolean).join(' ');
    });
  });
  return `${told.trimEnd()}\n${marks.length ? `\n${marks.join('\n')}\n` : ''}`;
}
