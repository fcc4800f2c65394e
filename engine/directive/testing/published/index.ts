import type { DirectiveInput } from '../../document.ts';
import { caps } from './caps.ts';
import { lives } from './lives.ts';
import { parts } from './parts.ts';
import { whole } from './whole.ts';

/**
 * Published directives, cited by number and register. Only what was read in the published text stands here. They are
 * tests, not data to maintain an aircraft by.
 *
 * One is an **extract** where words on whom it affects, what it asks or when were not readable. Paragraphs on approvals,
 * contacts and cost stand in none. A day or limit that was not read is named as a placeholder in `extract` or
 * `reference`; no case rests on it.
 */
export const published: readonly DirectiveInput[] = [...whole, ...lives, ...caps, ...parts];
export const byNumber = (number: string): DirectiveInput => published.find((d) => d.number === number)!;
