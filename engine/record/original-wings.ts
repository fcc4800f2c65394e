export interface OriginalPart {
  readonly id: string;
  readonly part: 'wing' | 'inboard_spar';
  readonly hand: 'left' | 'right';
  readonly into: string;
  readonly place: string;
}

/**
 * The parts that an aircraft opens with where no paper names any: two wings with an inboard spar in each, believed
 * original until seen. Holders come before what sits in them.
 */
export const originalWings = (aircraft: string): readonly OriginalPart[] =>
  (['left', 'right'] as const).flatMap((hand) => {
    const end = `${aircraft.replace(/^aircraft:/, '')}-${hand === 'left' ? 'L' : 'R'}`;
    return [
      { id: `wing:${end}`, part: 'wing', hand, into: aircraft, place: `${hand}_wing` },
      { id: `spar:${end}`, part: 'inboard_spar', hand, into: `wing:${end}`, place: `${hand}_inboard_spar` },
    ] as const;
  });
