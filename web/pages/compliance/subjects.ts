import type { ApprovalChoices } from '../../api/approvals.ts';

const same = (a: string, b: string): boolean => a.toUpperCase() === b.toUpperCase();

/** The aircraft that a person lists by registration or serial. Says which it does not know, and which serial two bear. */
export function subjectsOf(words: string, aircraft: ApprovalChoices['aircraft']): string[] {
  const asked = words.split(/[,;\s]+/).filter(Boolean);
  const unknown: string[] = [];
  const found = asked.flatMap((w) => {
    const byRegistration = aircraft.filter((a) => same(a.registration, w));
    const meant = byRegistration.length ? byRegistration : aircraft.filter((a) => same(a.serial, w));
    if (meant.length > 1)
      throw new Error(
        `Serial ${w} is borne by ${meant.map((a) => a.registration).join(' and ')}: name the registration.`,
      );
    if (!meant[0]) unknown.push(w);
    return meant.map((a) => a.id);
  });
  if (unknown.length) throw new Error(`This shop has no aircraft ${unknown.join(', ')}. Nothing was written.`);
  return [...new Set(found)];
}
