import { basisMissingSheet, type Sheet } from '../../sheets/index.ts';
import type { BasisWord } from '../../store/index.ts';
import type { AircraftAsked } from './aircraft.ts';
import { modelsOf } from './kept.ts';

/** A page that says what is missing and where to enter it. */
export const missingFor = (
  word: BasisWord,
  of: AircraftAsked,
  because: 'none kept' | 'none fits' | 'made for others' | 'unread',
  unread = '',
): Sheet =>
  basisMissingSheet({
    word,
    shop: of.g.shop,
    thing: of.g.thing,
    life: of.g.lives.get(of.g.thing.id),
    parts: of.g.parts,
    day: of.g.day,
    because,
    unread,
    kept: of.kept.map((b) => ({ name: b.name, title: String(b.outline.title ?? b.name), models: modelsOf(b) })),
  });
