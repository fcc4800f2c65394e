import { createHash } from 'node:crypto';
import { type Day, type directive, isRefusal, type outlook, type record } from '../../engine/index.ts';
import { flyingOf, outlookOn } from '../answers.ts';
import type { Gently } from './gently.ts';

type Line = directive.StandingLine;
type Dates = Line['dates'];
const MOST = 20_000;

/** Dates by what they follow from: readings, day, and what is left. A draft is tried again and again, and most stays as it was. */
export class KeptDates {
  readonly #all = new Map<string, Dates>();
  get(key: string): Dates | undefined {
    return this.#all.get(key);
  }
  set(key: string, dates: Dates): void {
    if (this.#all.size >= MOST) this.#all.delete(this.#all.keys().next().value!);
    this.#all.set(key, dates);
  }
}

/** What is due now, ended or not affected names no date: no forecast is made of it. */
const wanted = (l: Line): boolean =>
  !l.notComputed && !['ended', 'not affected', 'due', 'overdue'].includes(l.treatAs.standing) && !l.treatAs.dueAt.now;
const endOf = ({ left, dueAt }: directive.LineEnd) => [left?.hours_s ?? null, left?.landings ?? null, dueAt];

/** The dates of one aircraft: its flying is read once, and only where a line asks for a date that is not known yet. */
export class Forecasts {
  #flying: outlook.Flying | null | undefined;
  readonly #readings: readonly record.ReadTotal[];
  readonly #day: Day;
  readonly #kept: KeptDates;
  readonly #of: string;
  constructor(readings: readonly record.ReadTotal[], day: Day, kept: KeptDates) {
    this.#readings = readings;
    this.#day = day;
    this.#kept = kept;
    const all = readings.map((r) => `${r.day} ${r.total_s} ${r.landings}`);
    this.#of = createHash('sha1')
      .update(`${day}\n${all.join('\n')}`)
      .digest('base64');
  }
  /** @throws Refusal those of the outlook for what is left */
  async dated(line: Line, gently: Gently): Promise<Line> {
    if (!wanted(line)) return line;
    const key = `${this.#of}|${JSON.stringify([line.treatAs, line.couldBecome].map(endOf))}`;
    const known = this.#kept.get(key);
    if (known !== undefined) return { ...line, dates: known };
    if (this.#flying === undefined) {
      this.#flying = this.#read();
      await gently.pause();
    }
    const dates = this.#flying && this.#datesOf(this.#flying, line);
    this.#kept.set(key, dates);
    return { ...line, dates };
  }
  #datesOf(flying: outlook.Flying, line: Line): Dates {
    const day = this.#day;
    const standing = { worst: line.treatAs.standing, best: line.couldBecome.standing };
    const o = outlookOn(flying, { ...line, day, standing }, day);
    return o && { asOf: day, treatAs: o.treatAs, couldBecome: o.couldBecome };
  }
  /** Readings that no forecast can stand on name no date; the standings hold all the same. */
  #read(): outlook.Flying | null {
    try {
      return flyingOf(this.#readings, this.#day);
    } catch (e) {
      if (!isRefusal(e)) throw e;
      return null;
    }
  }
}
