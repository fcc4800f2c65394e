import type { Day, directive, Evidence, record } from '../engine/index.ts';
import type { Assessment, Outlooks } from './standing.ts';

export interface PriceItem {
  readonly directive: string;
  readonly action: string;
  readonly low_cents: number;
  readonly high_cents: number;
  readonly days: number;
}
export interface LetterInput {
  readonly shop: {
    readonly name: string;
    readonly address: string;
    readonly person: string;
    readonly telephone: string;
    readonly invented?: boolean;
  };
  readonly aircraft: record.Thing;
  readonly parts: readonly record.Thing[];
  readonly lives: ReadonlyMap<string, record.Life>;
  readonly assessments: readonly Assessment[];
  readonly outlooks: Outlooks;
  readonly directive: string;
  /** What nothing could be computed for, as the part is not on record. */
  readonly absent?: readonly string[];
  readonly documents: readonly directive.DirectiveDocument[];
  readonly prices: readonly PriceItem[];
  /** The money of the price list, as the shop writes it. */
  readonly currency?: string | undefined;
  /** Ferry permits of the aircraft, in one line each. */
  readonly permits?: readonly string[];
  readonly listChecked?: { readonly day: Day; readonly by: string } | null;
  readonly number: string;
  readonly day: Day;
  /** How each entry is known, so that a reading told on the telephone is not called a log. */
  readonly evidence?: ReadonlyMap<string, Evidence>;
}
