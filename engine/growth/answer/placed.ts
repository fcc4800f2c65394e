import type { CrackForm, CrackSize } from '../model.ts';

/** A crack in the form that it has: without depth, or as deep as the part is thick, it is a through crack. */
export function placed(form: CrackForm, size: CrackSize): { readonly form: CrackForm; readonly size: CrackSize } {
  if (form.tips === 1) return { form, size: { c_mm: size.c_mm } };
  const deepest = form.deepest_a_mm ?? form.thickness_mm;
  const isThrough = size.a_mm === undefined || size.a_mm >= deepest;
  return isThrough && form.through
    ? { form: form.through, size: { c_mm: size.c_mm } }
    : { form, size: { c_mm: size.c_mm, a_mm: size.a_mm } };
}
