import { expect, it } from 'vitest';
import { directive } from '../engine/index.ts';
import { W14_2 } from '../examples/scenario/directives.ts';
import { directiveSheet } from './directive-sheet.ts';
import { describe as described } from './frame.ts';
import { AIRCRAFT, TODAY } from './testing/case.ts';

it('a year built that no one stated is not shown as one', () => {
  expect(described({ ...AIRCRAFT, identity: 'copy' })).toMatch(/, built \d{4}$/);
  expect(described({ ...AIRCRAFT, identity: 'assumed' })).toMatch(/, year built not known, counted from \d{4}$/);
});

it('a directive read back has its days in words, and one case is one', () => {
  const document = directive.readDirective(W14_2);
  const sheet = (cases: number) =>
    directiveSheet({
      document,
      readBack: directive.readBack(document),
      cases: directive.runCases(document).slice(0, cases),
      adopted: { by: 'A. Person', on: TODAY },
      day: TODAY,
      invented: true,
    });
  const rule = JSON.stringify(sheet(1).blocks.filter((b) => b.block === 'prose'));
  expect(rule).not.toMatch(/\d{4}-\d{2}-\d{2}/);
  const answer = (n: number) =>
    sheet(n)
      .answer.map((s) => s.text)
      .join('');
  expect(answer(1)).toContain('Its one test case comes out as written.');
  expect(answer(2)).toContain('All 2 cases come out as written.');
});
