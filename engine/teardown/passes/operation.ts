import type { Floor } from '../floor-document.ts';
import type { Operation, OperationKind } from '../model.ts';
import type { Stage } from '../structure-document.ts';
import { handsCents, NO_TIME } from './times.ts';

export const idOf = (kind: OperationKind, of: string): string => `${kind}:${of}`;

type Given = Partial<Omit<Operation, 'id' | 'kind' | 'of' | 'stage' | 'title'>> & { goods_cents?: number };
/** An operation with what is common to most; the cost of its hands and goods is worked out here. */
export function operation(
  kind: OperationKind,
  of: string,
  stage: Stage,
  title: string,
  { goods_cents = 0, ...given }: Given,
  floor?: Floor,
): Operation {
  const { minutes = NO_TIME, persons = 1, unattended = false } = given;
  return {
    id: idOf(kind, of),
    kind,
    of,
    stage,
    title,
    minutes,
    persons: unattended ? 0 : persons,
    skill: null,
    unattended,
    tools: [],
    face: 'either',
    who: 'shop',
    jig: null,
    after: [],
    within: null,
    may_pause: true,
    duplicate: false,
    cents: (unattended ? 0 : handsCents(minutes, persons, floor)) + Math.round(goods_cents),
    done: false,
    exposes: [],
    because: null,
    from: null,
    ...given,
    ...(unattended ? { persons: 0 } : {}),
  };
}
