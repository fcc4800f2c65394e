import { A_OVER_C, A_OVER_T, C_OVER_W, IN_PLANE, OUT_OF_PLANE, TENSION } from './corner-table-data.ts';
import { hermite } from './hermite.ts';

export type TableLoad = 'tension' | 'out_of_plane' | 'in_plane';
type Curve = (x: number) => number;
/** Curves in c/W, made once: by load, tip, a/c and a/t. */
const curves = (blocks: typeof TENSION): Curve[][][] =>
  [0, 1].map((tip) =>
    blocks.map((block) =>
      block.map((row) =>
        hermite(
          C_OVER_W,
          row.map((cell) => cell[tip]!),
        ),
      ),
    ),
  );
const CURVES = { tension: curves(TENSION), out_of_plane: curves(OUT_OF_PLANE), in_plane: curves(IN_PLANE) };
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
  const [a, c] = CURVES[load].map((tip) => {
    const byDepth = tip.map((rows) =>
      hermite(
        A_OVER_T,
        rows.map((row) => row(cw)),
      )(at),
    );
    return hermite(A_OVER_C, byDepth)(ac);
  });
  return { a: a!, c: c! };
}
