const fieldOf = (place: string) => document.querySelector<HTMLElement>(`[data-place="${CSS.escape(place)}"]`);
const above = (place: string): string => place.slice(0, Math.max(0, place.lastIndexOf('.')));

/**
 * Moves the focus to the field of a place, or to the nearest that holds it. What is folded around it opens; a fold that
 * draws its fields only then is looked into once more.
 */
export function focusPlace(path: string, again = true): void {
  let place = path;
  while (place !== '' && !fieldOf(place)) place = above(place);
  const field = fieldOf(place);
  if (!field) return;
  const closed = field instanceof HTMLDetailsElement && !field.open;
  for (let fold = field.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
    fold.open = true;
  if (closed && again) {
    setTimeout(() => focusPlace(path, false), 60);
    return;
  }
  requestAnimationFrame(() => {
    field.scrollIntoView({ block: 'center' });
    field.focus({ preventScroll: true });
  });
}

/** Moves the focus to the first field of a part that was added just now, so that a keyboard goes on where it is filled in. */
export function focusFresh(path: readonly (string | number)[]): void {
  setTimeout(() => {
    const part = fieldOf(path.join('.'));
    const field = part?.querySelector<HTMLElement>('input:not([type=hidden]), select, textarea');
    (field ?? part)?.focus();
  }, 60);
}
