import type { Column } from '../../../sheets/model.ts';
import type { Row } from '../../parts/order.ts';

export interface WantedRowProps {
  readonly shop: string;
  readonly row: Row;
  readonly columns: readonly Column[];
  readonly day: string;
  /** Who asks: typed once for all rows. */
  readonly by: string;
  readonly setBy: (by: string) => void;
  readonly tell: (words: string) => void;
}
