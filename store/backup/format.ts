import type { Head } from '../carry.ts';

export const VERSION = 'backup/1';

/** Where a shop stands in a backup. */
export interface ShopMark extends Head {
  readonly entries: number;
  readonly hash: string;
}
/** First line. */
export interface BackupHead {
  readonly sparwright: typeof VERSION;
  readonly program: string;
  readonly made_at: string;
  readonly shops: readonly ShopMark[];
}
export interface DroppedShop {
  readonly shop: string;
  readonly name: string;
  readonly entries: number;
  readonly lastHash: string;
  readonly droppedAt: string;
  readonly droppedBy: string;
}
/** What one shop's lines came to, head line left out. */
export interface Section extends ShopMark {
  readonly files: number;
  readonly sha256: string;
  /** One figure over all projections of the shop, and the shape of the tables it was made with. */
  readonly tables: string;
}
/** Last line. `sha256` is over every line before it, each with its line end. */
export interface BackupTail {
  readonly lines: number;
  readonly sha256: string;
  readonly shape: string;
  readonly shops: readonly Section[];
  readonly dropped: number;
}
export interface BackupSummary {
  readonly head: BackupHead;
  readonly tail: BackupTail;
  /** What is wrong with the log itself though the copy is whole, in sentences. */
  readonly problems: readonly string[];
}
