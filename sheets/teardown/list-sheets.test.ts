import { describe, expect, it } from 'vitest';
import type { Day } from '../../engine/index.ts';
import { type JobListed, teardownListSheet } from './list-sheets.ts';

const day = (text: string) => text as Day;
const job = (name: string, ends: string, latest: string | null): JobListed => ({
  name,
  title: name,
  on: day('2026-11-25'),
  by: 'M. Orne',
  entry: 617,
  invented: true,
  finding: '',
  targets: 'replace the right inboard spar',
  side: 'right',
  aircraft: null,
  steps: 196,
  done: 10,
  begins: day('2026-11-23'),
  ends: day(ends),
  latest: latest === null ? null : day(latest),
});
const listOf = (jobs: readonly JobListed[]) =>
  teardownListSheet({ shop: { id: 'own', name: 'Own' }, day: day('2026-11-25'), jobs, maps: [], floors: [] });
const spoken = (jobs: readonly JobListed[]) =>
  listOf(jobs)
    .answer.map((s) => s.text)
    .join('');

describe('the list of the room', () => {
  it('says both ends of a job that waits for a part, as its quote does', () => {
    expect(spoken([job('spar', '2026-12-29', '2027-03-02')])).toMatch(
      /the next to end is spar, between about 29 Dec 2026 and 2 Mar 2027\.$/,
    );
    expect(spoken([job('tank', '2026-12-03', null)])).toMatch(/the next to end is tank, about 3 Dec 2026\.$/);
  });
  it('tells a shop that keeps nothing where to begin', () => {
    expect(listOf([]).because).toBe(
      'A structure map comes first: the parts of a wing and the rows that hold them. A job rests on it.',
    );
  });
});
