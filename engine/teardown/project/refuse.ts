import { Refusal } from '../../foundation/refusal.ts';

/** One code for every way in which a project cannot be read; the lines say which. */
export function unreadable(given: string, allowed: string, remedy: string): never {
  throw new Refusal('teardown.project-unreadable', { given, allowed, remedy });
}
