import type { Mark, Scene, Seen, Shown } from '../model.ts';

type Drawn = Exclude<Mark, { is: 'text' }>;
const FAINT = { stroke: 'line', fill: 'none', width: 0.9 } as const;

/** How the marks of a part are drawn: what is off is a faint outline; what comes off next is heavy, and has its name beside it. */
function partSeen(m: Drawn, seen: Seen): Drawn {
  if (seen === 'off') return dashed({ ...m, ...FAINT }, '2 4');
  if (seen === 'next') return { ...m, stroke: 'dye', fill: 'dye-soft', width: 2.6 };
  if (seen === 'comes-off') return { ...m, stroke: 'dye', fill: 'dye-soft', width: 1.6 };
  return m;
}
/** Of a join: open is a faint row of dots, clipped a row of heavy dots. */
function joinSeen(m: Drawn, seen: Seen): Drawn {
  if (seen === 'open' || seen === 'off') return dashed({ ...m, ...FAINT }, '1 4');
  if (seen === 'clipped') return dashed({ ...m, stroke: 'ink', width: 3 }, '3 7');
  if (seen === 'next') return { ...m, stroke: 'dye', width: 3.4 };
  return { ...m, stroke: 'dye', width: 2 };
}
const dashed = (m: Drawn, dash: string): Drawn => (m.is === 'path' ? { ...m, dash } : m);

/** One mark as a state of the picture shows it. */
export function markShown(m: Mark, seen: Seen | undefined): Mark {
  if (m.is === 'text' || seen === undefined) return m;
  return m.id?.startsWith('join:') ? joinSeen(m, seen) : partSeen(m, seen);
}

/**
 * A picture in a state: what is off fades, what is next is drawn last, over the rest, with its name.
 * `cut`: no higher than this state needs, where no other state stands in its place.
 */
export function sceneShown(scene: Scene, shown: Shown, { cut = false }: { cut?: boolean } = {}): Scene {
  const seenOf = (m: Mark) => (m.id === undefined ? undefined : shown.seen[m.id]);
  const under = scene.marks.filter((m) => seenOf(m) !== 'next');
  const over = scene.marks.filter((m) => seenOf(m) === 'next');
  return {
    ...scene,
    height: cut ? (shown.height ?? scene.height) : scene.height,
    description: shown.description,
    marks: [...under, ...over].map((m) => markShown(m, seenOf(m))).concat(shown.labels),
  };
}
