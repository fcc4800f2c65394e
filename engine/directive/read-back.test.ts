import { describe, expect, it } from 'vitest';
import { readBack, readDirective } from './index.ts';
import { rule } from './testing/rule.ts';

const limit = { first: { hours_h: 100, is: 'at', of: 'part', since: 'new' } };
const said = (change: object): string => {
  const d = readDirective(rule(limit as never));
  const actions = d.actions.map((a) => ({ ...a, ...change }));
  return readBack({ ...d, actions } as typeof d)
    .flatMap((s) => s.sentences)
    .join(' ');
};

describe('when an action is first due, read back', () => {
  it('never says that it waits for a finding where none starts it', () => {
    expect(said({ first: undefined })).toContain('When it is first due is not said yet');
    expect(said({ first: undefined })).not.toContain('after that finding');
  });
  it('by its finding where one starts it; by its limit where there is one', () => {
    const started = { first: undefined, started_by: [{ action: 'look', finding: 'crack' }] };
    expect(said(started)).toContain('First due: before further flight after that finding.');
    expect(said({})).toMatch(/First due: .*100/);
  });
});
