import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { Router } from 'wouter';
import { newestOf } from './correct.tsx';
import stories from './papers.stories.tsx';

test('a corrected entry is struck through with what stands in its place, and has no form', () => {
  const [typical] = stories[0]!.stories;
  const html = renderToStaticMarkup(<Router ssrPath="/demo">{typical ? <typical.Draw /> : null}</Router>);
  expect(html).toMatch(/<s>.*Total 1204\.3 h.*<\/s>/);
  expect(html).toContain('Entry 12 by M. Orne');
  expect(html.match(/>correct</g)?.length).toBe(1);
});
test('the newest of a chain of corrections', () => {
  const r = (number: number, by?: number) => ({ number, replacedBy: by ? { number: by, words: '' } : null }) as never;
  expect(newestOf(r(1, 2), [r(1, 2), r(2, 3), r(3)])).toMatchObject({ number: 3 });
  expect(newestOf(r(1, 9), [r(1, 9)])).toMatchObject({ number: 1 });
});
