import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { Router } from 'wouter';
import beside from './beside.stories.tsx';
import form from './form.stories.tsx';

describe.each([form, beside])('$part', ({ stories }) => {
  test.each(stories)('$state: draws, without an inline style, every field with its label', ({ Draw }) => {
    const html = renderToStaticMarkup(
      <Router ssrPath="/own/directive/new">
        <Draw />
      </Router>,
    );
    expect(html).not.toContain('style=');
    expect(html).not.toMatch(/undefined|NaN|\[object/);
    const labelled = new Set([...html.matchAll(/<label[^>]* for="([^"]+)"/g)].map((m) => m[1]));
    for (const [, id] of html.matchAll(/<(?:input|select|textarea) id="([^"]+)"/g)) expect(labelled).toContain(id);
    for (const [, ids] of html.matchAll(/aria-describedby="([^"]+)"/g))
      for (const id of ids!.split(' ')) expect(html).toContain(`id="${id}"`);
  });
});
test('what is wrong with a field is tied to it', () => {
  const failing = form.stories.find((s) => s.state === 'action, failing')!;
  const html = renderToStaticMarkup(<failing.Draw />);
  expect(html.match(/aria-invalid="true"/g)).toHaveLength(3);
  expect(html).toContain('^ here');
});
