import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import stories from './compliance.stories.tsx';

test('every state draws, without an inline style', () => {
  for (const { state, Draw } of stories.stories) {
    const html = renderToStaticMarkup(<Draw />);
    expect(html, state).not.toContain('style=');
    expect(html, state).not.toMatch(/undefined|NaN|\[object/);
  }
});
