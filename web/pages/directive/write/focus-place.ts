/** Moves the focus to the field of a place, or to the nearest that holds it; what is folded around it opens. */
export function focusPlace(path: string): void {
  for (let place = path; place !== ''; place = place.slice(0, Math.max(0, place.lastIndexOf('.')))) {
    const field = document.querySelector<HTMLElement>(`[data-place="${CSS.escape(place)}"]`);
    if (!field) continue;
    for (let fold = field.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
      fold.open = true;
    requestAnimationFrame(() => {
      field.scrollIntoView({ block: 'center' });
      field.focus({ preventScroll: true });
    });
    return;
  }
}
