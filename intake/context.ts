import type { Day, Evidence, record } from '../engine/index.ts';

/** What the file itself does not say. */
export interface IntakeContext {
  /** Aircraft that the log belongs to. */
  readonly subject: string;
  /** Its registration, where the file has a column for it. */
  readonly registration?: string;
  /** Name of the paper. */
  readonly title: string;
  readonly seenBy?: string;
  readonly evidence: Evidence;
  readonly fileSha256?: string;
  /** Rows after this day are refused. */
  readonly today: Day;
  /** What the log holds already, to know rows that are in it. */
  readonly existing?: readonly (record.Entry | record.EntryInput)[];
  readonly onProgress?: (done: number, of: number) => void;
}
