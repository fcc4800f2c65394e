import type { TeardownDocument } from '../document.ts';
import type { Floor } from '../floor-document.ts';
import { hourCents, indexOf, isMadeAnew, meanOf, NO_TIME, rowTime, splitStep } from '../map/index.ts';
import type { Operation, OperationKind } from '../model.ts';
import type { Stage, ThreePoint } from '../structure-document.ts';
import { countInWords, inText } from '../words.ts';

type Hands = Pick<Operation, 'persons' | 'tools' | 'face'> & { readonly skill?: string | undefined };
function made(
  kind: OperationKind,
  of: string,
  stage: Stage,
  title: string,
  minutes: ThreePoint,
  hands: Hands,
  floor: Floor | undefined,
  rest: Partial<Operation> = {},
): Operation {
  const { persons, tools, face, skill } = hands;
  return {
    id: `${kind}:${of}`,
    kind,
    of,
    stage,
    title,
    minutes,
    persons,
    skill: skill ?? null,
    unattended: false,
    tools,
    face,
    who: 'shop',
    jig: null,
    after: [],
    within: null,
    may_pause: true,
    duplicate: false,
    cents: Math.round((meanOf(minutes) * persons * hourCents(floor)) / 60),
    done: false,
    exposes: [],
    because: null,
    from: null,
    ...rest,
  };
}

/** A step of the map, a look or a small job as an operation, without its place in the order. */
export function operationOf(document: TeardownDocument, id: string): Operation {
  const { map, floor } = document;
  const index = indexOf(map);
  const [kind, of] = splitStep(id);
  if (kind === 'support') {
    const s = index.support.get(of)!;
    return made('support', of, 'take_down', `Set up: ${inText(s.name)}`, s.set_up, s, floor, { jig: s.jig ?? null });
  }
  if (kind === 'open') {
    const j = index.join.get(of)!;
    const title = `${isMadeAnew(j) ? 'Drill out' : 'Take out'} ${countInWords(j.fasteners.count, j.fasteners.kind)}: ${inText(j.name)}`;
    return made('open', of, 'take_down', title, rowTime(map, j, 'open'), j, floor);
  }
  if (kind === 'off') {
    const p = index.part.get(of)!;
    return made('off', of, 'take_down', `Take off: ${inText(p.name)}`, p.take_off, p, floor);
  }
  if (kind === 'look') {
    const l = index.look.get(of)!;
    const method = l.method ? `, ${l.method}` : '';
    return made('look', of, 'take_down', `Look: ${inText(l.name)}${method}`, l.minutes, l, floor, { from: l.from });
  }
  const j = index.job.get(of)!;
  const work = made('job', of, 'bare', `While it is open: ${inText(j.name)}`, j.minutes, j, floor, { from: j.from });
  return { ...work, cents: work.cents + j.parts_cents };
}

const ANY_HAND: Hands = { persons: 1, tools: [], face: 'either' };
/** Work that a finding adds, and repairs that are asked for. A time that the map does not hold is said to be missing. */
export function repairOf(document: TeardownDocument, part: string, minutes: ThreePoint | null): Operation {
  const name = indexOf(document.map).part.get(part)?.name ?? part;
  const hands = indexOf(document.map).part.get(part);
  return made(
    'repair',
    part,
    'bare',
    `Repair: ${inText(name)}`,
    minutes ?? NO_TIME,
    hands ? { ...ANY_HAND, skill: hands.skill } : ANY_HAND,
    document.floor,
    { because: minutes ? null : 'The map holds no time for this repair: it counts as nothing until one is given' },
  );
}
/** What a recorded finding adds besides: its own hours of work, under the name of the look. */
export function findingWorkOf(document: TeardownDocument, look: string): Operation | null {
  const l = indexOf(document.map).look.get(look)!;
  if (!l.finding_work) return null;
  return made(
    'repair',
    look,
    'bare',
    `Put right what was found: ${inText(l.name)}`,
    l.finding_work,
    { ...ANY_HAND, skill: l.skill },
    document.floor,
    {
      because: 'Found by the look',
      from: l.from,
    },
  );
}
