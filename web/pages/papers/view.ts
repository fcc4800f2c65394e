/** How a page of a scan is looked at: turned by quarters, enlarged, moved. */
export interface View {
  readonly turned: number;
  readonly larger: number;
  readonly x: number;
  readonly y: number;
}
export const WHOLE: View = { turned: 0, larger: 1, x: 0, y: 0 };
const [SMALLEST, LARGEST, STEP, MOVE] = [0.25, 8, 1.25, 60];

const clamp = (n: number): number => Math.min(LARGEST, Math.max(SMALLEST, n));
export const turn = (v: View, quarters: number): View => ({ ...v, turned: (v.turned + 90 * quarters + 360) % 360 });
/** Larger by a factor; the point under the fingers stays where it is. */
export function enlarge(v: View, by: number, at: { x: number; y: number } = { x: 0, y: 0 }): View {
  const larger = clamp(v.larger * by);
  const k = larger / v.larger;
  return { ...v, larger, x: at.x - (at.x - v.x) * k, y: at.y - (at.y - v.y) * k };
}
export const move = (v: View, dx: number, dy: number): View => ({ ...v, x: v.x + dx, y: v.y + dy });

/** The same by keys: + and -, arrows, R to turn, 0 for the whole page. */
export function byKey(v: View, key: string): View | null {
  switch (key) {
    case '+':
    case '=':
      return enlarge(v, STEP);
    case '-':
      return enlarge(v, 1 / STEP);
    case '0':
      return { ...WHOLE, turned: v.turned };
    case 'r':
      return turn(v, 1);
    case 'R':
      return turn(v, -1);
    case 'ArrowLeft':
      return move(v, MOVE, 0);
    case 'ArrowRight':
      return move(v, -MOVE, 0);
    case 'ArrowUp':
      return move(v, 0, MOVE);
    case 'ArrowDown':
      return move(v, 0, -MOVE);
    default:
      return null;
  }
}
export const transformOf = (v: View): string =>
  `translate(${v.x}px, ${v.y}px) rotate(${v.turned}deg) scale(${v.larger})`;
