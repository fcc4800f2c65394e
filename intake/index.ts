/** Files into grids of cells, grids into entries of the log. */
export { type PageLine, type PageRead, readPage, type TypedPage, type TypedRow, typedHours } from './book-page.ts';
export { broughtForward, type Closing, closeGap } from './close-gap.ts';
export type { IntakeContext } from './context.ts';
export { entriesFrom } from './entries.ts';
export { openQuestions } from './lines.ts';
export { COLUMNS, type Column, type Mapping, type MappingInput, parseMapping, shapeOf, zMapping } from './mapping.ts';
export { type Cell, type Grid, LIMITS, type Row } from './model.ts';
export { type Preview, type PreviewRow, preview } from './preview.ts';
export { readGrid } from './read.ts';
export { suggestMapping } from './suggest.ts';
