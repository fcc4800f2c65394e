import type { DirectiveInput } from '../../document.ts';
import { hours } from './hours.ts';
import { mixed } from './mixed.ts';

/**
 * Published directives, cited by number and register. Only what was read in the published text stands here; a text
 * that was readable in part is marked as an extract. They are tests, not data to maintain an aircraft by.
 */
export const published: readonly DirectiveInput[] = [...hours, ...mixed];
export const byNumber = (number: string): DirectiveInput => published.find((d) => d.number === number)!;
