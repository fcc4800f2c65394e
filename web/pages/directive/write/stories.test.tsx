import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import form from './form.stories.tsx';

test('what is wrong with a field is tied to it', () => {
  const failing = form.find((s) => s.part === 'Directive, an action')!.stories.find((s) => s.shows === 'failing')!;
  const html = renderToStaticMarkup(<failing.Draw />);
  expect(html.match(/aria-invalid="true"/g)).toHaveLength(3);
  expect(html).toContain('^ here');
});
