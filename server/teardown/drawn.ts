import type { Day, teardown } from '../../engine/index.ts';
import { emptySheet, type Sheet } from '../../sheets/index.ts';

/** Pages that have no sheet of their own yet: their names and their findings. */
export function plainSheet(
  title: string,
  day: Day,
  invented: boolean,
  because: string,
  findings: readonly teardown.MapFinding[] = [],
): Sheet {
  return {
    ...emptySheet('teardown', title, day, invented),
    answer: [{ text: title }],
    because,
    blocks: [
      {
        block: 'findings',
        title: 'Findings',
        findings: findings.map((f) => ({ code: f.code, text: f.text, entries: [], remedy: f.remedy })),
        empty: 'None.',
      },
    ],
  };
}
