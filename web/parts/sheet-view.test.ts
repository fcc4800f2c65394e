import { expect, it } from 'vitest';
import type { TableBlock } from '../../sheets/model.ts';
import { widthOf } from './sheet-view.tsx';

const table = (columns: number, more: Partial<TableBlock> = {}): TableBlock => ({
  block: 'table',
  title: 'Table',
  columns: Array.from({ length: columns }, (_, i) => ({ key: String(i), title: String(i), align: 'left' })),
  rows: [],
  empty: '',
  ...more,
});
it.each([
  [table(3), 'side'],
  [table(4), 'wide'],
  [table(3, { wide: true }), 'wide'],
  [table(2, { wide: true }), 'wide'],
])('a table stands over the whole width where it has many columns, or says so', (block, width) => {
  expect(widthOf(block)).toBe(width);
});
