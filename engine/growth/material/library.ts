import { LIBRARY_2024 } from './library-2024.ts';
import { LIBRARY_7075 } from './library-7075.ts';
import type { LibraryMaterial } from './library-model.ts';
import { LIBRARY_OTHERS } from './library-others.ts';

/** Materials by name, every constant with where it comes from and how well it is known. */
export const MATERIALS: Readonly<Record<string, LibraryMaterial>> = {
  ...LIBRARY_2024,
  ...LIBRARY_7075,
  ...LIBRARY_OTHERS,
};
