import type { AndOrProblem, Map300 } from './builder.ts';

/**
 * Five kinds of structure, each of 300 parts and 600 joins drawn from a seed. Costs are whole cents and close together
 * (fasteners of a row × a fastener, within some 30 %), so that no alternative is plainly the cheaper one; access comes
 * from several sides, so loops arise by themselves: a part gives access to rows that hold the part that gives access to
 * its own. Every kind has several targets that share what stands in the way, which is what makes the least set hard:
 * the cheapest way to each alone is not the cheapest way to all.
 */
export const KINDS: Readonly<
  Record<string, { readonly hardBecause: string; readonly make: (m: Map300) => AndOrProblem }>
> = {
  'skins over ribs': {
    hardBecause:
      'three layers of panels on both faces; a row of a rib is reached through panels of either face or through the bay beside it, so opening runs through the bays in loops, and ten targets share panels',
    make: (m) => {
      const [rows, columns] = [5, 10];
      /** Per bay: two layers above, two below, a rib, a stringer: 6 × 50 parts. */
      const at = (r: number, c: number, k: number) => 6 * (columns * r + c) + k;
      const inside = (r: number, c: number) => r >= 0 && c >= 0 && r < rows && c < columns;
      const around = (r: number, c: number) =>
        [
          [r - 1, c],
          [r + 1, c],
          [r, c - 1],
          [r, c + 1],
        ].filter(([a, b]) => inside(a!, b!)) as [number, number][];
      for (let r = 0; r < rows; r++)
        for (let c = 0; c < columns; c++) {
          const near = m.shuffled(around(r, c));
          const rib = (i: number) => at(near[i % near.length]![0], near[i % near.length]![1], 4);
          const [topOut, topIn, lowOut, lowIn, ribHere, stringer] = [0, 1, 2, 3, 4, 5].map((k) => at(r, c, k)) as [
            number,
            number,
            number,
            number,
            number,
            number,
          ];
          /** Outer panels: from outside, or where a neighbour laps over it, after one of the two. */
          for (const out of [topOut, lowOut]) {
            const lap = near.slice(0, 2).map(([a, b]) => at(a, b, out === topOut ? 0 : 2));
            m.join([out], m.chance(0.5) ? [lap] : []);
            m.join([out], []);
          }
          for (const [under, over] of [
            [topIn, topOut],
            [lowIn, lowOut],
          ] as const) {
            m.join([under], [[over, ribHere, rib(0)]]);
            m.join([under], [[over], [rib(0), rib(1), ribHere]]);
          }
          m.join([ribHere, stringer], [[topIn, lowIn, rib(0)]]);
          m.join(
            [ribHere],
            [
              [topIn, lowIn],
              [rib(0), rib(1), topOut],
            ],
          );
          m.join([ribHere], [[lowIn, rib(1), rib(2)]]);
          m.join([stringer], [[topIn, lowIn, rib(2)]]);
        }
      m.fill((a) => [[a(), a(), a()]]);
      return m.problem(
        m.some(10, (i) => 6 * i + 4 + (i % 2), 50),
        12,
      );
    },
  },
  'box, two-sided': {
    hardBecause:
      'every row needs a hand on the head side and a bucking bar behind it, two clauses of three ways each, so choices are coupled in odd rings as in covering by pairs, where halves fool a linear bound',
    make: (m) => {
      const n = 300;
      const ring = (i: number) => ((i % n) + n) % n;
      for (let p = 0; p < n; p++) {
        const span = () => ring(p + m.pick([-21, -20, -19, -2, -1, 1, 2, 19, 20, 21]));
        const skin = p % 6 === 0;
        m.join(
          [p],
          skin
            ? []
            : [
                [span(), span(), span()],
                [span(), span(), span()],
              ],
        );
        m.join([p, span()], skin ? [] : [[span(), span(), span()]]);
      }
      return m.problem(
        m.some(8, (i) => i, n),
        20,
      );
    },
  },
  'chain with shortcuts': {
    hardBecause:
      'three strands of a hundred parts, each after the one before it or by shortcuts from the other strands; ways are long, nearly equally dear and cross each other, so a bound sees the choice late',
    make: (m) => {
      const strand = (p: number) => p % 3;
      for (let p = 0; p < 300; p++) {
        const back = (k: number) => Math.max(0, p - 3 * k);
        const other = () => Math.max(0, p - 3 * (1 + m.int(4)) + ((strand(p) + 1 + m.int(2)) % 3) - strand(p));
        const ahead = () => Math.min(299, p + 1 + m.int(9));
        const first = p < 9;
        m.join([p], first ? [] : [[back(1), other(), ahead()]]);
        m.join([p], !first && m.chance(0.12) ? [[back(1), back(2), other()]] : []);
      }
      return m.problem([297, 298, 299, 200 + m.int(60), 120 + m.int(60), 60 + m.int(40)], 12);
    },
  },
  'bays with shared covers': {
    hardBecause:
      'covers serve several bays and bays several covers, as a covering problem with costs that hardly differ; rows in a bay need two covers, and looks that pay only together hang on covers nobody else needs',
    make: (m) => {
      /** 60 covers, 240 parts in 80 bays. */
      const bay = (p: number) => Math.floor((p - 60) / 3);
      const covers = Array.from({ length: 80 }, (_, b) => {
        const near = Math.floor((b * 60) / 80);
        return m.shuffled([-4, -3, -2, -1, 0, 1, 2, 3, 4].map((d) => (near + d + 60) % 60));
      });
      for (let p = 0; p < 60; p++) {
        m.join([p], []);
        m.join([p], m.chance(0.4) ? [[(p + 1) % 60, (p + 7) % 60, (p + 59) % 60]] : []);
      }
      for (let p = 60; p < 300; p++) {
        const over = m.shuffled(covers[bay(p)]!);
        const mate = 60 + ((p - 60 + 3 * m.pick([-2, -1, 1, 2]) + 240) % 240);
        m.join([p], [over.slice(0, 3)]);
        m.join([p], [[over[3]!, over[4]!, mate], over.slice(5, 8)]);
      }
      return m.problem(
        m.some(20, (i) => 60 + i, 240),
        25,
      );
    },
  },
  'tangle with loops': {
    hardBecause:
      'a part is held by rows of other parts and reached from anywhere: nearly all things lie in one great loop, nothing is forced, and any good set has many near twins',
    make: (m) => {
      const any = () => m.int(300);
      for (let p = 0; p < 300; p++) {
        const free = p % 12 === 0;
        m.join([p], free ? [] : [[any(), any(), any()]]);
        m.join([p, ...(m.chance(0.2) ? [any()] : [])], !free && m.chance(0.3) ? [[any(), any(), any(), any()]] : []);
      }
      return m.problem(
        m.some(6, (i) => i, 300),
        12,
      );
    },
  },
};
