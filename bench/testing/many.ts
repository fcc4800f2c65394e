import { randomSource, type record } from '../../engine/index.ts';
import { Book, doubler, wings, yearly } from '../../examples/scenario/write.ts';

const BASES = ['Ostrey Field', 'Fenmoor', 'Tolva', 'Hollin Down', 'Saltmarsh'];
const OWNERS = ['A. Brook', 'Fenmoor Flyers', 'C. Orme', 'Moor Tow Club', 'T. Sallow'];
const MODELS = ['W4', 'W4-T', 'W4', 'W4-T', 'W2-A'];

/** "ZQ-AAA" onwards: invented, one after the other. */
const registration = (n: number): string =>
  `ZQ-${[676, 26, 1].map((v) => String.fromCharCode(65 + (Math.floor(n / v) % 26))).join('')}`;

/** One invented aircraft with two wings and two spars, ten to twenty readings, and a gap in every fifth book. */
export function manyAircraft(n: number, seed = 1): record.EntryInput[] {
  const random = randomSource(seed, n);
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random.next() * of.length)]!;
  const serial = String(3000 + n);
  const aircraft = `aircraft:many-${n}`;
  const year = 1998 + Math.floor(random.next() * 12);
  const built = `${year}-04-11`;
  const book = new Book(`M${n}`, `Logbook ${registration(n)}`);
  book.add('aircraft', aircraft, built, {
    registration: registration(n),
    type: 'Whimbrel',
    model: MODELS[n % MODELS.length]!,
    serial,
    built,
    owner: pick(OWNERS),
    base: pick(BASES),
  });
  wings(book, `many-${n}`, built, aircraft);
  doubler(book, `many-${n}`, built);
  const years = 2026 - year - Math.floor(random.next() * 2);
  const rate = { hours: 40 + Math.floor(random.next() * 260), landings: 60 + Math.floor(random.next() * 420) };
  const rows = yearly(
    { day: `${year}-11-10`, total_h: rate.hours / 2, landings: Math.round(rate.landings / 2) },
    years,
    rate,
  );
  const tow = n % 3 === 0 ? Math.round(rate.hours * years * 0.1) : 0;
  book.add('use', aircraft, built, {
    from: built,
    split: tow ? [{ use: 'tow', hours_h: tow, landings: tow * 4 }] : [],
    rest: 'private',
  });
  if (n % 5 === 0)
    book.add('gap', aircraft, '2009-01-01', {
      from: '2009-01-01',
      to: '2011-06-30',
      because: 'Volume 2 of the logbook is lost',
      paper_wanted: `Logbook ${registration(n)}, volume 2`,
    });
  book.readings(aircraft, rows);
  return book.entries;
}

/** The same aircraft under another number: its life, with its own names. The answers of one are those of the other. */
export const renamed = (text: string, from: number, to: number): string =>
  text
    .replaceAll(new RegExp(`\\bmany-${from}\\b`, 'g'), `many-${to}`)
    .replaceAll(registration(from), registration(to))
    .replaceAll(new RegExp(`\\b${3000 + from}\\b`, 'g'), String(3000 + to))
    .replaceAll(new RegExp(`"M${from}-`, 'g'), `"M${to}-`);
