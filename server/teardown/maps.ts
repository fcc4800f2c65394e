import type { Day } from '../../engine/index.ts';
import { type Sheet, type Units, withHistory } from '../../sheets/index.ts';
import { standing } from '../basis/kept.ts';
import { type Desk, dayOf } from '../desk.ts';
import { given } from '../routes/directive/text.ts';
import { plainSheet } from './drawn.ts';
import { checkMap, readFloor, readStructure } from './engine.ts';

interface Asked {
  /** Name of a kept one; else the document. */
  readonly name?: string | undefined;
  readonly document?: unknown;
  readonly units?: Units | undefined;
  readonly upTo?: number | undefined;
}
type Of = 'structure' | 'floor';

/** The page of a structure map or of a floor: what it holds, its picture, and what is wrong with it. @throws Refusal as `readStructure`, `readFloor` */
export async function thingSheet(desk: Desk, shopId: string, of: Of, asked: Asked): Promise<Sheet> {
  const shop = await desk.store.shops.get(shopId);
  const row = asked.name === undefined ? null : await standing(desk, shop.id, of, asked.name, asked.upTo);
  const document = row ? row.document : given(asked.document);
  const day = dayOf(desk, undefined);
  const sheet = of === 'structure' ? mapSheet(document, day, shop.invented) : floorSheet(document, day, shop.invented);
  return row ? withHistory(sheet, await desk.store.bases.history(shop.id, of, row.name, asked.upTo)) : sheet;
}
function mapSheet(document: unknown, day: Day, invented: boolean): Sheet {
  const map = readStructure(document);
  return plainSheet(map.title, day, invented || map.invented, `${map.parts.length} parts`, checkMap(map));
}
function floorSheet(document: unknown, day: Day, invented: boolean): Sheet {
  const floor = readFloor(document);
  return plainSheet(floor.title, day, invented || floor.invented, `${floor.crew.length} persons`);
}
