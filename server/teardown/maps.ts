import { type Day, teardown } from '../../engine/index.ts';
import { floorSheet, type Sheet, structureSheet, type Units, withHistory } from '../../sheets/index.ts';
import { standing } from '../basis/kept.ts';
import { type Desk, dayOf } from '../desk.ts';
import { given } from '../routes/directive/text.ts';

interface Asked {
  /** Name of a kept one; else the document. */
  readonly name?: string | undefined;
  readonly document?: unknown;
  readonly units?: Units | undefined;
  readonly upTo?: number | undefined;
}
type Of = 'structure' | 'floor';
interface Shown {
  readonly document: unknown;
  readonly day: Day;
  readonly units?: Units | undefined;
  readonly name?: string | undefined;
  readonly invented: boolean;
}

/**
 * The page of a structure map or of a floor: what it holds, its picture, and what is wrong with it.
 * @throws Refusal as `readStructure`, `readFloor`
 */
export async function thingSheet(desk: Desk, shopId: string, of: Of, asked: Asked): Promise<Sheet> {
  const { name, units, upTo } = asked;
  const shop = await desk.store.shops.get(shopId);
  const row = name === undefined ? null : await standing(desk, shop.id, of, name, upTo);
  const document = row ? row.document : given(asked.document);
  const sheet = DRAWN[of]({ document, units, name, day: dayOf(desk, undefined), invented: shop.invented });
  return row ? withHistory(sheet, await desk.store.bases.history(shop.id, of, row.name, upTo)) : sheet;
}
const DRAWN: Readonly<Record<Of, (q: Shown) => Sheet>> = {
  structure: ({ document, invented, ...q }) => {
    const map = teardown.readStructure(document);
    return structureSheet({ ...q, map: invented ? { ...map, invented } : map, findings: teardown.checkMap(map) });
  },
  floor: ({ document, invented, day, name }) => {
    const floor = teardown.readFloor(document);
    return floorSheet({ floor: invented ? { ...floor, invented } : floor, day, name });
  },
};
