import { A_OVER_C, A_OVER_T, C_OVER_W, IN_PLANE, OUT_OF_PLANE, TENSION } from './corner-table-data.ts';
import { hermite } from './hermite.ts';

export type TableLoad = 'tension' | 'out_of_plane' | 'in_plane';
const BLOCKS = { tension: TENSION, out_of_plane: OUT_OF_PLANE, in_plane: IN_PLANE };
/** What bending becomes when the axes are changed over. */
const CHANGED: Record<TableLoad, TableLoad> = {
  tension: 'tension',
  out_of_plane: 'in_plane',
  in_plane: 'out_of_plane',
};

/**
 * f of the corner crack at both tips, from the table: Hermite in c/W, then a/t, then a/c. A crack deeper than long is
 * read with its axes changed over: a with c, thickness with width, bending in the plane with bending out of it.
 */
export function tableFactor(
  load: TableLoad,
  { ac, at, cw }: { ac: number; at: number; cw: number },
): { a: number; c: number } {
  if (ac > 1) {
    const changed = tableFactor(CHANGED[load], { ac: 1 / ac, at: cw, cw: at });
    return { a: changed.c, c: changed.a };
  }
  const tip = (which: 0 | 1): number => {
    const byDepth = BLOCKS[load].map((block) => {
      const rows = block.map((row) =>
        hermite(
          C_OVER_W,
          row.map((cell) => cell[which]),
          cw,
        ),
      );
      return hermite(A_OVER_T, rows, at);
    });
    return hermite(A_OVER_C, byDepth, ac);
  };
  return { a: tip(0), c: tip(1) };
}
