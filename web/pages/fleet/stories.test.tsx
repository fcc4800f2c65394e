import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { Router } from 'wouter';
import due from './due.stories.tsx';
import fleet from './fleet.stories.tsx';
import readings from './readings.stories.tsx';

const drawn = (state: string, search = '', of = fleet) => {
  const story = of.stories.find((s) => s.state === state)!;
  return renderToStaticMarkup(
    <Router ssrPath="/own/fleet" ssrSearch={search}>
      <story.Draw />
    </Router>,
  );
};

test('two thousand rows are counted for a screen reader, few of them drawn', () => {
  const html = drawn('overflowing');
  expect(html).toContain('aria-rowcount="2001"');
  const lines = html.match(/<tr [^>]*data-row=/g)!.length;
  expect(lines).toBeGreaterThan(5);
  expect(lines).toBeLessThan(60);
});
test('a link that filters says what it hides', () => {
  expect(drawn('typical', 'standing=not+yet+due')).toMatch(/\d+ of 24 aircraft shown\..*overdue.*hidden by the filter/);
  expect(drawn('typical')).not.toContain('hidden by the filter');
});
test('without an aircraft the two ways in stand there; without the program the day of the rows', () => {
  expect(drawn('empty')).toMatch(/Answer a caller.*Drop a logbook/);
  expect(drawn('failing')).toContain('as on 25 Nov 2026');
});
test('the files hold the days that the page shows', () => {
  for (const format of ['pdf', 'csv', 'xlsx'])
    expect(drawn('typical', '', due)).toContain(
      `/api/shops/own/fleet/due?from=2026-11-25&amp;to=2027-11-25&amp;format=${format}`,
    );
});
test('a hundred wanted readings at first, then all', () => {
  const html = drawn('overflowing', '', readings);
  expect(html.match(/<h3>/g)).toHaveLength(100);
  expect(html).toContain('Show all 240 aircraft');
});
