import type { teardown } from '../../engine/index.ts';

/** What pays to look at while the invented wing is open, and small jobs that wait for it. Chances and sums are made up. */
type Look = NonNullable<teardown.StructureInput['looks']>[number];
type Job = NonNullable<teardown.StructureInput['jobs']>[number];
type Side = 'left' | 'right';
const FROM = { source: 'Invented for demonstration', place: 'chances and sums', known: 'invented' } as const;
const t = (low_min: number, likely_min: number, high_min: number) => ({ low_min, likely_min, high_min });

export function wingLooks(side: Side): Look[] {
  const id = (name: string) => `${side}-${name}`;
  const Side = side === 'left' ? 'Left' : 'Right';
  const look = (
    name: string,
    words: string,
    at: string,
    needs: NonNullable<Look['needs']>,
    minutes: readonly [number, number, number],
    [chance, now, later]: readonly [number, number, number],
    rest: Partial<Look> = {},
  ): Look => ({
    id: id(`look-${name}`),
    name: `${Side} ${words}`,
    at: id(at),
    needs,
    minutes: t(...minutes),
    chance,
    now_cents: now * 100,
    later_cents: later * 100,
    from: FROM,
    ...rest,
  });
  const off = (name: string) => `off:${id(name)}`;
  const open = (name: string) => `open:${id(name)}`;
  const looks = [
    look(
      'attach-holes',
      'attach bolt holes of the spar',
      'row-attach-lower',
      [open('row-attach-lower'), open('row-attach-upper')],
      [30, 45, 90],
      [0.06, 900, 6200],
      { method: 'eddy current in the bolt hole', skill: 'ndt', finding_work: t(120, 240, 480) },
    ),
    look(
      'splice-holes',
      'splice holes of the outboard spar',
      'outboard-spar',
      [open('row-splice-lower'), open('row-splice-upper')],
      [40, 60, 100],
      [0.08, 1400, 9800],
      {
        method: 'eddy current, rivets out',
        skill: 'ndt',
        finding_targets: [{ part: id('outboard-spar'), work: 'replace' }],
        finding_work: t(600, 900, 1800),
      },
    ),
    look(
      'tank-bay',
      'spar web and skins in the tank bay',
      'inboard-spar',
      [off('tank')],
      [15, 20, 40],
      [0.12, 350, 2100],
      {
        method: 'by eye, for corrosion',
        before_closing: true,
        finding_work: t(60, 150, 400),
      },
    ),
    look('rib-4', 'flanges of rib 4 behind the tank', 'rib-4', [off('tank')], [10, 15, 25], [0.1, 420, 2600], {
      method: 'by eye and dye penetrant',
      finding_targets: [{ part: id('rib-4'), work: 'replace' }],
      finding_work: t(120, 240, 600),
    }),
    look(
      'nose-ribs',
      'nose ribs and the inside of the nose',
      'nose-outboard',
      [off('nose-outboard')],
      [15, 25, 40],
      [0.15, 260, 900],
      {
        before_closing: true,
        finding_work: t(60, 120, 240),
      },
    ),
    look(
      'rear-attach',
      'rear attach fitting',
      'row-attach-rear',
      [open('row-attach-rear')],
      [15, 20, 40],
      [0.05, 700, 3600],
      {
        skill: 'ndt',
        method: 'eddy current in the bolt hole',
      },
    ),
    look('rear-spar', 'rear spar at the flap hinges', 'rear-spar', [off('flap')], [15, 25, 40], [0.03, 800, 2400]),
    look('fuel-line', 'fuel line for chafing', 'fuel-line', [off('nose-inboard')], [5, 10, 15], [0.2, 90, 700]),
  ];
  if (side === 'left') return looks;
  return [
    ...looks,
    look(
      'walkway-doubler',
      'doubler under the walkway, while it is bare',
      'walkway-doubler',
      [off('inboard-spar')],
      [20, 30, 60],
      [0.18, 650, 4800],
      {
        method: 'by eye and eddy current from below, spar out',
        skill: 'ndt',
        always: true,
        finding_targets: [{ part: id('walkway-doubler'), work: 'replace' }],
        finding_work: t(240, 420, 900),
      },
    ),
  ];
}

export function wingJobs(side: Side): Job[] {
  const id = (name: string) => `${side}-${name}`;
  const Side = side === 'left' ? 'Left' : 'Right';
  const job = (
    name: string,
    words: string,
    at: string,
    needs: readonly string[],
    minutes: readonly [number, number, number],
    parts: number,
    later: number,
    chance: number,
  ): Job => ({
    id: id(`job-${name}`),
    name: `${Side} ${words}`,
    at: id(at),
    needs: [...needs],
    minutes: t(...minutes),
    parts_cents: parts * 100,
    later_cents: later * 100,
    chance,
    from: FROM,
  });
  return [
    job(
      'fuel-hose',
      'fuel hose renewed',
      'fuel-line',
      [`open:${id('row-fuel-line')}`, `off:${id('nose-inboard')}`],
      [20, 30, 50],
      140,
      820,
      0.7,
    ),
    job('sender', 'fuel sender overhauled', 'tank', [`off:${id('tank')}`], [40, 60, 90], 180, 760, 0.6),
    job(
      'hinge-bearings',
      'aileron hinge bearings renewed',
      'aileron',
      [`off:${id('aileron')}`],
      [40, 60, 90],
      95,
      380,
      0.5,
    ),
    job('flap-bushes', 'flap bushes renewed', 'flap', [`off:${id('flap')}`], [30, 45, 70], 60, 240, 0.4),
  ];
}
