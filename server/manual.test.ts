import { expect, it } from 'vitest';
import { manual, manualOf, picturePath } from './manual.ts';

it('reads sections, paragraphs, lists and pictures in their order', () => {
  const read = manualOf('# M\n\nBefore `x`.\n\n## One\n\nA **b**.\n\n- c\n- d\n\n![E](manual/e.png)\n\n## Two\n');
  expect(read).toEqual({
    title: 'M',
    sections: [
      { title: '', parts: [{ is: 'paragraph', text: 'Before x.' }] },
      {
        title: 'One',
        parts: [
          { is: 'paragraph', text: 'A b.' },
          { is: 'list', items: ['c', 'd'] },
          { is: 'picture', address: '/api/manual/e.png', text: 'E' },
        ],
      },
      { title: 'Two', parts: [] },
    ],
  });
});
it('gives only the pictures that the manual names', () => {
  const named = manual().sections.flatMap((s) => s.parts.flatMap((p) => (p.is === 'picture' ? [p.address] : [])));
  expect(named.length).toBeGreaterThan(5);
  for (const address of named)
    expect(picturePath(address.replace('/api/manual/', ''))).toMatch(/docs\/manual\/.+\.png$/);
  for (const name of ['../manual.md', 'other.png', '', '../../package.json'])
    expect(() => picturePath(name)).toThrow(/a picture that the manual names|picture/);
});
