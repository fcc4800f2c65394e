import { flushSync } from 'react-dom';

const fieldOf = (place: string) => document.querySelector<HTMLElement>(`[data-place="${CSS.escape(place)}"]`);
const above = (place: string): string => place.slice(0, Math.max(0, place.lastIndexOf('.')));

/**
 * Moves the focus to the field of a place, or to the nearest that holds it. What is folded around it opens; a fold that
 * draws its fields only then is looked into once more, unless the focus was moved meanwhile.
 */
export function focusPlace(path: string, again = true): void {
  let place = path;
  while (place !== '' && !fieldOf(place)) place = above(place);
  const field = fieldOf(place);
  if (!field) return;
  if (again && field instanceof HTMLDetailsElement && !field.open) {
    const from = document.activeElement;
    const opened = () => [from, document.body].includes(document.activeElement) && focusPlace(path, false);
    field.addEventListener('toggle', opened, { once: true });
    openAround(field);
    return;
  }
  openAround(field);
  field.scrollIntoView({ block: 'center' });
  field.focus({ preventScroll: true });
}
function openAround(field: HTMLElement): void {
  for (let fold = field.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
    fold.open = true;
}

/**
 * Adds a part and moves the focus to its first field, so that a keyboard goes on where it is filled in. Both at once: a
 * focus that comes later takes a fast hand out of the field it has gone on to.
 */
export function addFresh(path: readonly (string | number)[], add: () => void): void {
  flushSync(add);
  const part = fieldOf(path.join('.'));
  const field = part?.querySelector<HTMLElement>('input:not([type=hidden]), select, textarea');
  (field ?? part)?.focus();
}
