import type { CrackForm } from '../model.ts';

const from = { source: 'AE 737 lecture 2', known: 'read' } as const;
const rootPi = (c_mm: number) => Math.sqrt((Math.PI * c_mm) / 1000);
const form = (thickness_mm: number, longest_c_mm: number, k: (c: number) => number, net: (c: number) => number) =>
  ({
    shape: 'plain',
    tips: 1,
    thickness_mm,
    longest_c_mm,
    through: null,
    from,
    outside: ({ c_mm }) => (c_mm > 0 && c_mm <= longest_c_mm ? null : 'beyond the ligament'),
    k: ({ c_mm }) => ({ c: k(c_mm), a: null }),
    net: ({ c_mm }) => net(c_mm),
  }) satisfies CrackForm;

/** Centre crack 2c in a sheet so wide that its edges are not felt. */
export const wide = (thickness_mm: number): CrackForm => form(thickness_mm, 1e6, rootPi, () => 1);
/** Centre crack 2c in a width, by the secant. */
export const centre = (width: number, thickness_mm: number): CrackForm =>
  form(
    thickness_mm,
    (width / 2) * (1 - 1e-9),
    (c) => rootPi(c) / Math.sqrt(Math.cos((Math.PI * c) / width)),
    (c) => 1 - (2 * c) / width,
  );
/** Edge crack, by the polynomial that starts with `first`. */
export const edge = (width: number, thickness_mm: number, first = 1.122): CrackForm =>
  form(
    thickness_mm,
    0.6 * width,
    (c) => {
      const x = c / width;
      return rootPi(c) * (first + x * (-0.231 + x * (10.55 + x * (-21.71 + x * 30.82))));
    },
    (c) => 1 - c / width,
  );
