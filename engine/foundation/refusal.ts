import type { RefusalCode } from './refusal-codes.ts';

export interface RefusalDetail {
  /** What came in, quoted so that a person finds it again. */
  readonly given: string;
  /** What would have been accepted. */
  readonly allowed: string;
  /** What to do now. */
  readonly remedy: string;
  /** Where the limit comes from, if it is not plain sense. */
  readonly source?: string;
  /** Place in a formula, counted from 1. */
  readonly place?: number;
}

/** Input that is impossible or out of scope. A failing check is a finding, never a refusal. */
export class Refusal extends Error {
  readonly code: RefusalCode;
  readonly detail: RefusalDetail;
  constructor(code: RefusalCode, detail: RefusalDetail) {
    super(`${detail.given}; ${detail.allowed}. ${detail.remedy}${detail.source ? ` (${detail.source})` : ''}`);
    this.name = 'Refusal';
    this.code = code;
    this.detail = detail;
  }
}

export const isRefusal = (e: unknown): e is Refusal => e instanceof Refusal;
