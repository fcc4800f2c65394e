import type { Sheet } from '../../sheets/model.ts';
import { get, post, type RefusalLines, remove } from './client.ts';
import { shopPath } from './shops.ts';

/** Where the crack is that lives are drawn of: a kept document or one that is not kept, in itself or in an aircraft. */
export interface ChanceSource {
  readonly name?: string;
  readonly document?: unknown;
  readonly aircraft?: string;
  readonly part?: string;
  readonly mix?: string;
  readonly day?: string;
}
export interface ChanceQuestion extends ChanceSource {
  readonly lives?: number;
  readonly seed?: number;
  readonly units: 'mm' | 'inch';
}
/** A long computation as it stands. */
export interface Work {
  readonly done: number;
  readonly of: number;
  readonly sheet?: Sheet;
  readonly refusal?: RefusalLines;
}
export const drawLives = (shop: string, question: ChanceQuestion): Promise<{ work: string }> =>
  post(shopPath(shop, 'growth', 'chance'), question);
const pathOf = (id: string): string => `/api/work/${encodeURIComponent(id)}`;
export const lookAt = (id: string): Promise<Work> => get(pathOf(id));
export const stopWork = (id: string): Promise<unknown> => remove(pathOf(id));
