import loadHighs from 'highs';
import type { AndOrProblem } from '../../model.ts';

/** The least cost by the program of shopfloor.md 1.2 C: who supports what, and levels that rise along the support. */
export async function byMip({ cost, clauses, targets }: AndOrProblem): Promise<number> {
  const solver = await loadHighs();
  const n = cost.length;
  const rows: string[] = targets.map((t) => `y${t} = 1`);
  const binaries = cost.map((_, j) => `y${j}`);
  clauses.forEach((list, j) => {
    list.forEach((clause, c) => {
      const supports = [...new Set(clause)].filter((k) => k !== j).map((k) => ({ k, z: `z${j}_${c}_${k}` }));
      rows.push(supports.length ? `${supports.map((s) => s.z).join(' + ')} - y${j} >= 0` : `y${j} = 0`);
      for (const { k, z } of supports) {
        binaries.push(z);
        rows.push(`${z} - y${k} <= 0`, `u${j} - u${k} - ${n} ${z} >= ${1 - n}`);
      }
    });
  });
  const objective = cost.map((c, j) => `${c < 0 ? '-' : '+'} ${Math.abs(c)} y${j}`).join(' ');
  const levels = cost.map((_, j) => ` 0 <= u${j} <= ${n - 1}`).join('\n');
  const made = solver.solve(
    `Minimize\n obj: ${objective}\nSubject To\n${rows.map((r, i) => ` r${i}: ${r}`).join('\n')}\nBounds\n${levels}\nBinary\n ${binaries.join(' ')}\nEnd\n`,
    { mip_rel_gap: 0, mip_abs_gap: 0.5 },
  );
  if (made.Status !== 'Optimal') throw new Error(made.Status);
  return Math.round(made.ObjectiveValue);
}
