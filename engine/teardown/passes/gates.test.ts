import { describe, expect, it } from 'vitest';
import { readFloor, readStructure } from '../map/index.ts';
import { floorOf } from '../schedule/testing/random-floor.ts';
import { STAGES, type Stage, type StructureInput } from '../structure-document.ts';
import { gatesOf, practiceFinding, practiceGates, reassemble, withGates } from './index.ts';
import { operation } from './operation.ts';
import { MADE_UP, SPAR_OUT, smallJob, smallMap, t } from './testing/small-wing.ts';

const gate = (id: string, before: Stage, rest: Partial<NonNullable<StructureInput['gates']>[number]> = {}) => ({
  id,
  name: id,
  before,
  who: 'shop' as const,
  minutes: t(10),
  from: MADE_UP,
  ...rest,
});
const withOwn = (gates: NonNullable<StructureInput['gates']>) => readStructure({ ...smallMap(), gates });
const down = [
  operation('open', 'straps', 'take_down', 'open', { minutes: t(1) }),
  operation('off', 'tank', 'take_down', 'off', { after: ['open:straps'] }),
  operation('put', 'tank', 'finish', 'put', { after: ['off:tank'] }),
];
const ids = (all: readonly { id: string }[]) => all.map((o) => o.id);

describe('gates of the map', () => {
  const map = withOwn([
    gate('second', 'take_down', { after: ['first'] }),
    gate('first', 'take_down', { wait_h: 2 }),
    gate('third', 'take_down', { duplicate: true, who: 'installer' }),
    gate('only-nose', 'take_down', { only_if: ['off:nose'] }),
    gate('only-tank', 'finish', { only_if: ['off:nose', 'off:tank'] }),
  ]);
  it('stand in their order, with what they wait for; those for what is not on the plan do not', () => {
    const made = gatesOf(map, down);
    expect(made.map((o) => [o.id, o.after])).toEqual([
      ['gate:first', []],
      ['gate:first-wait', ['gate:first']],
      ['gate:second', ['gate:first-wait']],
      ['gate:third', ['gate:second']],
      ['gate:only-tank', ['off:tank', 'gate:third']],
    ]);
    expect(made[1]).toMatchObject({ unattended: true, persons: 0, cents: 0, minutes: t(120) });
    expect(made[3]).toMatchObject({ duplicate: true, who: 'installer' });
  });
  it('hold up all of their stage', () => {
    const whole = withGates(map, down);
    expect(ids(whole).slice(0, 5)).toEqual([
      'gate:first',
      'gate:first-wait',
      'gate:second',
      'gate:third',
      'open:straps',
    ]);
    expect(whole.find((o) => o.id === 'open:straps')?.after).toEqual(['gate:third']);
    expect(whole.find((o) => o.id === 'put:tank')?.after).toEqual(['off:tank', 'gate:only-tank']);
  });
  it('gates that name each other in a circle still all stand', () => {
    const circle = withOwn([gate('a', 'finish', { after: ['b'] }), gate('b', 'finish', { after: ['a'] })]);
    expect(ids(gatesOf(circle, down))).toEqual(['gate:a', 'gate:b']);
  });
  it('what is done is done', () =>
    expect(gatesOf(map, down, undefined, new Set(['gate:first'])).map((o) => o.done)).toEqual([
      true,
      false,
      false,
      false,
      false,
    ]));
});

describe('gates of common practice', () => {
  const map = withOwn([]);
  const spar = [
    ...SPAR_OUT.off.map((p) => operation('off', p, 'take_down', p, {})),
    operation('open', 'hang', 'take_down', 'hang', {}),
  ];
  it('fuel, attach bolts: in the order of the trade, those of the installer named, all from memory', () => {
    const made = gatesOf(map, spar).filter((o) => !o.unattended);
    expect(ids(made)).toEqual(
      [
        'receiving',
        'defuel',
        'survey',
        'supports',
        'shims',
        'bolts',
        'leak',
        'sender',
        'second-look',
        'crating',
        'check-flight',
      ].map((i) => `gate:${i}`),
    );
    expect(made.filter((o) => o.who === 'installer').map((o) => o.of)).toEqual(['check-flight']);
    expect(made.every((o) => o.from?.known === 'memory')).toBe(true);
  });
  it('the duplicate inspection is of an inspector where the floor names one; where it names none, that is said', () => {
    const floor = (...skills: string[]) => readFloor(floorOf({ crew: [{ name: 'Ash', skills }] }));
    const asks = (f: ReturnType<typeof floor>) => gatesOf(map, spar, f).find((o) => o.id === 'gate:second-look')!;
    const codes = (f?: ReturnType<typeof floor>, m = map) => practiceFinding(m, f).map((x) => x.code);
    const [named, none] = [floor('metal', 'inspector'), floor('metal')];
    expect([asks(named).skill, asks(none).skill]).toEqual(['inspector', null]);
    expect(asks(named).duplicate).toBe(true);
    expect(codes(named)).toEqual(['gates-of-practice']);
    expect(codes(none)).toEqual(['no-inspector', 'gates-of-practice']);
    expect(codes()).toEqual(['gates-of-practice']);
    expect(codes(none, withOwn([gate('first', 'take_down')]))).toEqual([]);
  });
  it('rigging, cables, balance and the second look at the controls where a control surface comes off', () => {
    const flap = readStructure({
      ...smallMap(),
      parts: [...smallMap().parts, { ...smallMap().parts[2]!, id: 'flap', kind: 'control_surface' }],
    });
    const gates = practiceGates(flap, [operation('off', 'flap', 'take_down', 'flap', {})]).map((g) => g.id);
    expect(gates).toEqual([
      'receiving',
      'survey',
      'supports',
      'balance',
      'second-look',
      'crating',
      'rigging',
      'cables',
      'controls',
      'check-flight',
    ]);
  });
});

it('with the passes, every stage that has a gate is held up by it', () => {
  const document = smallJob();
  const plan = withGates(document.map, reassemble(document, SPAR_OUT).operations);
  const order = plan.map((o) => STAGES.indexOf(o.stage));
  expect(order).toEqual([...order].sort((a, b) => a - b));
});
