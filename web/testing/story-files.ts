import type { Stories } from '../parts/story.ts';

const files = import.meta.glob<{ default: Stories | readonly Stories[] }>('../**/*.stories.tsx', { eager: true });

/** Every story of the program, part by part. */
export const allStories: readonly Stories[] = Object.values(files)
  .flatMap((f) => f.default)
  .sort((a, b) => a.part.localeCompare(b.part, 'en'));
