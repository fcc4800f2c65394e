import { readdirSync } from 'node:fs';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { Router } from 'wouter';
import type { Stories } from './story.ts';

const here = new URL('.', import.meta.url);
const files = readdirSync(here).filter((f) => f.endsWith('.stories.tsx'));

describe('stories', () => {
  test('there are stories', () => expect(files.length).toBeGreaterThan(5));
  for (const file of files)
    test(`${file}: every state draws, without an inline style`, async () => {
      const { default: all } = (await import(new URL(file, here).href)) as { default: Stories };
      for (const { state, Draw } of all.stories) {
        const html = renderToStaticMarkup(
          <Router ssrPath="/own/aircraft">
            <Draw />
          </Router>,
        );
        expect(html, state).not.toContain('style=');
        expect(html, state).not.toMatch(/undefined|NaN|\[object/);
      }
    });
});
