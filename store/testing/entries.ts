import { type Day, parseDay } from '../../engine/index.ts';
import type { NewEntry } from '../index.ts';

export const AT = '2026-03-01T10:00:00.000Z';

/** An entry with the parts that a test does not care about filled in. */
export const entry = (
  subject: string,
  kind: string,
  day: string,
  body: unknown,
  more: Partial<NewEntry> = {},
): NewEntry => ({
  subject,
  kind,
  day: parseDay(day) as Day,
  order: 0,
  body,
  schema: 'record/1',
  evidence: 'seen',
  ...more,
});

export const anAircraft = (subject: string, registration: string): NewEntry =>
  entry(subject, 'aircraft', '1980-05-01', {
    registration,
    type: 'Invented',
    model: 'V1',
    serial: '17',
    built: '1980-05-01',
    owner: 'First owner',
  });
export const aSpar = (subject: string, hand: 'left' | 'right'): NewEntry =>
  entry(subject, 'part', '1980-05-01', { part: 'inboard_spar', hand });
