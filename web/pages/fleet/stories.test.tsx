import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { Router } from 'wouter';
import stories from './fleet.stories.tsx';

const drawn = (state: string, search = '') => {
  const story = stories.stories.find((s) => s.state === state)!;
  return renderToStaticMarkup(
    <Router ssrPath="/own/fleet" ssrSearch={search}>
      <story.Draw />
    </Router>,
  );
};

test('every state draws, without an inline style', () => {
  for (const { state } of stories.stories) {
    const html = drawn(state);
    expect(html, state).not.toContain('style=');
    expect(html, state).not.toMatch(/undefined|NaN|\[object/);
  }
});
test('two thousand rows are counted for a screen reader, few of them drawn', () => {
  const html = drawn('overflowing');
  expect(html).toContain('aria-rowcount="2001"');
  const lines = html.match(/<tr [^>]*data-row=/g)!.length;
  expect(lines).toBeGreaterThan(5);
  expect(lines).toBeLessThan(60);
});
test('a link that filters says what it hides', () => {
  expect(drawn('typical', 'standing=not+yet+due')).toMatch(/\d+ of 24 shown\..*overdue.*hidden by the filter/);
  expect(drawn('typical')).not.toContain('hidden by the filter');
});
test('without an aircraft the two ways in stand there; without the program the day of the rows', () => {
  expect(drawn('empty')).toMatch(/Answer a caller.*Drop a logbook/);
  expect(drawn('failing')).toContain('as on 25 Nov 2026');
});
