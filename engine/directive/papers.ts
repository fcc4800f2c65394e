import { isRefusal } from '../foundation/refusal.ts';
import type { Life } from '../record/index.ts';
import { type Judged, judge } from './judge.ts';
import type { Tree } from './limit.ts';
import { found } from './missing.ts';
import type { EndOfAnswer, PaperWanted } from './model.ts';
import type { Situation } from './situation.ts';

const figure = (e: EndOfAnswer) => ({ left: e.left?.value ?? 0, dueAt: e.dueAt });

/**
 * What each missing paper would do: its figures are fixed as in the worst and as in the best history, and the
 * answer is made again. First the paper that leaves the answer narrowest. A history that cannot be fixed says nothing.
 */
export function papersWanted(s: Situation, tree: Tree, j: Judged, gaps: Life['gaps']): PaperWanted[] {
  const out: PaperWanted[] = [];
  for (const g of gaps) {
    try {
      const ifWorst = judge(found(s, g.variables, j.worst.witness), tree);
      const ifBest = judge(found(s, g.variables, j.best.witness), tree);
      const wide = [ifWorst, ifBest].map((x) => Math.abs(figure(x.best).left - figure(x.worst).left));
      out.push({
        gap: g.id,
        paper: g.papers[0] ?? 'the logbook of this stretch',
        from: g.from,
        to: g.to,
        ifWorst: figure(ifWorst.worst),
        ifBest: figure(ifBest.worst),
        staysWide: Math.round(Math.max(...wide) * 1e6) / 1e6,
      });
    } catch (e) {
      if (!isRefusal(e)) throw e;
    }
  }
  return out.sort((a, b) => a.staysWide - b.staysWide || b.ifBest.left - a.ifBest.left);
}
