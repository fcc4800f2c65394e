import type { Bounds } from '../../foundation/bounds.ts';

/** What one finding would add, cents: chance, goods that are certain once it is found, hands by three points. */
export interface FindingCost {
  readonly id: string;
  readonly name: string;
  readonly chance: number;
  readonly goods_cents: number;
  /** New parts that it asks for. */
  readonly parts_cents: Bounds;
  readonly hands_cents: { readonly low: number; readonly likely: number; readonly high: number };
}
