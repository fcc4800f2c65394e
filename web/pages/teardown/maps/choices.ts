/** Words of the document as a form offers them. */
const options = (words: readonly string[], texts: Readonly<Record<string, string>> = {}) =>
  words.map((value) => ({ value, text: texts[value] ?? value.replaceAll('_', ' ') }));

export const SIDES = options(['left', 'right', 'both'], { both: 'both, or the middle' });
export const FACES = options(['either', 'upper', 'lower'], {
  either: 'any',
  upper: 'upper face up',
  lower: 'lower face up',
});
export const KINDS = options(
  [
    'spar',
    'cap',
    'web',
    'skin',
    'rib',
    'nose_section',
    'tank',
    'doubler',
    'splice',
    'stringer',
    'fitting',
    'panel',
    'fairing',
    'control_surface',
    'system',
    'other',
  ],
  { splice: 'splice plate' },
);
export const FASTENERS = options(['solid_rivet', 'blind_rivet', 'bolt', 'screw', 'pin', 'clamp']);
export const HEADS = options(['protruding', 'flush']);
export const STAGES = options(
  ['arrive', 'prepare', 'take_down', 'bare', 'dry', 'apart', 'wet', 'finish', 'hand_over'],
  {
    arrive: 'the wing arrives',
    prepare: 'it is prepared',
    take_down: 'anything comes off',
    bare: 'work on the bare wing',
    dry: 'the dry pass',
    apart: 'it comes apart again',
    wet: 'the wet pass',
    finish: 'the last parts go on',
    hand_over: 'it is handed over',
  },
);
export const WHO = options(['shop', 'installer'], { shop: 'this shop', installer: 'the installer' });
export const WORKS = options(['replace', 'repair', 'reach'], { reach: 'reach and look' });
