import { describe, expect, it } from 'vitest';
import { type Day, directive, parseDay } from '../../engine/index.ts';
import { W14_1, W14_2 } from '../../examples/scenario/directives.ts';
import { numbersChanged } from './compute.ts';

const DAY = parseDay('2026-11-25');
const [first, second] = [W14_1, W14_2].map((d) => directive.readDirective(d)) as [
  directive.DirectiveDocument,
  directive.DirectiveDocument,
];
const other = { ...first, number: 'X-1', supersedes: undefined } as directive.DirectiveDocument;
const later = { ...second, effective: '2027-01-01' as Day };
const instead = { ...other, issue: 2, supersedes: [{ number: 'W-14' }] } as directive.DirectiveDocument;
const withdrawn = { ...second, withdrawnOn: '2026-11-01' as Day };

describe('numbers whose answers may change', () => {
  it.each<[string, directive.DirectiveDocument[], directive.DirectiveDocument[], string[]]>([
    ['nothing came', [first, other], [first, other], []],
    ['a new number', [first], [first, other], ['X-1']],
    ['a newer issue', [first, other], [first, other, second], ['W-14']],
    ['a newer issue, not yet effective', [first, other], [first, other, later], ['W-14']],
    ['one that supersedes another', [first, other], [first, other, instead], ['W-14', 'X-1']],
    ['an issue withdrawn', [first, second, other], [first, withdrawn, other], ['W-14']],
    [
      'one that superseded another, withdrawn',
      [first, instead],
      [first, { ...instead, withdrawnOn: '2026-11-01' as Day }],
      ['W-14', 'X-1'],
    ],
    ['the same in another order', [first, other], [other, first], []],
  ])('%s', (_, before, now, changed) => {
    expect([...numbersChanged(before, now, DAY)].sort()).toEqual(changed);
  });
});
