import type { record } from '../../engine/index.ts';
import { Book, doubler, wings, yearly } from './write.ts';

/**
 * The invented fleet: twelve aircraft and their spars, each with a story that the papers of a real shop tell.
 * Maker, types, registrations, people, places and figures are made up and resemble no real ones.
 */
type Entries = record.EntryInput[];
const W4 = { type: 'Whimbrel', model: 'W4' };
const W4T = { type: 'Whimbrel', model: 'W4-T' };
const W2A = { type: 'Whimbrel', model: 'W2-A' };
export const TODAY = '2026-11-25';

/** The tug that gave its left wing away in 2015; its book of 2009 to 2011 is lost. */
function hrn(): Entries {
  const a = 'aircraft:0447';
  const b = new Book('HRN', 'Logbook ZQ-HRN, volumes 1, 2 and 4');
  b.add('aircraft', a, '2004-03-02', {
    registration: 'ZQ-HRN',
    ...W4T,
    serial: '0447',
    built: '2004-03-02',
    owner: 'Tolva Gliding Club',
    base: 'Tolva',
  });
  wings(b, '0447', '2004-03-02', a);
  doubler(b, '0447', '2004-03-02');
  b.add('use', a, '2004-03-02', { from: '2004-03-02', to: '2009-02-28', use: 'private' });
  b.readings(a, [
    ['2005-03-01', 88.2, 120],
    ['2006-03-02', 180.5, 246],
    ['2007-03-01', 276.0, 371],
    ['2008-03-03', 369.9, 490],
    ['2009-02-28', 464.3, 612],
  ]);
  b.add('gap', a, '2009-03-01', {
    from: '2009-03-01',
    to: '2011-08-31',
    because: 'Volume 3 of the logbook is lost',
    paper_wanted: 'Logbook ZQ-HRN, volume 3',
  });
  b.readings(a, [
    ['2011-08-31', 810.6, 1512],
    ['2012-08-30', 981.0, 1908],
    ['2013-08-29', 1152.4, 2301],
    ['2014-08-30', 1311.5, 2684],
    ['2015-05-20', 1420.2, 2960],
  ]);
  b.add('use', a, '2011-09-01', {
    from: '2011-09-01',
    to: '2015-05-20',
    split: [{ use: 'tow', hours_h: 98, landings: 400 }],
    rest: 'private',
  });
  b.add('removal', 'wing:0447-L', '2015-05-20', { to: 'shelf' }, { order: 10 });
  b.add('part', 'wing:0447-LN', '2015-05-20', { part: 'wing', hand: 'left', built: '2015-02-01' });
  b.add('part', 'spar:0447-LN', '2015-05-20', {
    part: 'inboard_spar',
    hand: 'left',
    part_number: 'W4-5710',
    serial: 'N-2207',
    built: '2015-02-01',
  });
  b.add('opening', 'spar:0447-LN', '2015-05-20', { basis: 'new', hours_h: 0, landings: 0 });
  b.add('fitment', 'spar:0447-LN', '2015-05-20', { into: 'wing:0447-LN', place: 'left_inboard_spar' }, { order: 11 });
  b.add('fitment', 'wing:0447-LN', '2015-05-20', { into: a, place: 'left_wing' }, { order: 12 });
  b.add('use', a, '2015-05-21', {
    from: '2015-05-21',
    split: [{ use: 'tow', hours_h: 210, landings: 900 }],
    rest: 'private',
  });
  b.readings(a, yearly({ day: '2015-08-30', total_h: 1452, landings: 3048 }, 11, { hours: 78, landings: 210 }));
  return b.entries;
}

/** The aircraft of the first call: its left wing came from ZQ-HRN in 2015. */
function lmb(): Entries {
  const a = 'aircraft:0612';
  const b = new Book('LMB', 'Logbook ZQ-LMB, volumes 1 to 3');
  b.add('aircraft', a, '2005-04-11', {
    registration: 'ZQ-LMB',
    ...W4T,
    serial: '0612',
    built: '2005-04-11',
    owner: 'R. Undry',
    base: 'Ostrey Field',
  });
  wings(b, '0612', '2005-04-11', a, { right: '1188' });
  doubler(b, '0612', '2005-04-11');
  b.add('use', a, '2005-04-11', {
    from: '2005-04-11',
    to: '2015-06-01',
    split: [{ use: 'tow', hours_h: 180, landings: 850 }],
    rest: 'private',
  });
  b.readings(a, yearly({ day: '2005-11-10', total_h: 160, landings: 170 }, 9, { hours: 262, landings: 246 }));
  b.add('event', 'wing:0612-L', '2015-06-01', { event: 'ground_damage', detail: 'Left wing struck by a hangar door' });
  b.add('removal', 'wing:0612-L', '2015-06-01', { to: 'scrap' }, { order: 1 });
  b.add('fitment', 'wing:0447-L', '2015-06-01', { into: a, place: 'left_wing' }, { order: 2 });
  b.add('use', a, '2015-01-01', {
    from: '2015-06-02',
    split: [{ use: 'tow', hours_h: 160, landings: 412 }],
    rest: 'private',
  });
  b.readings(a, yearly({ day: '2015-06-01', total_h: 2690, landings: 2650 }, 11, { hours: 226, landings: 215 }));
  b.add('reading', a, '2026-11-14', { total_h: 5318.4, landings: 5118 }, { order: 9 });
  b.add(
    'seen',
    'spar:0612-R',
    '2026-11-14',
    { what: 'stamp', value: '1188', by: 'M. Orne' },
    { evidence: 'seen', paper: { title: 'Seen on the aircraft, right access panel' } },
  );
  b.add('accomplished', 'doubler:0612-R', '2026-01-20', {
    directive: 'W-9',
    issue: 1,
    action: 'look_again',
    finding: 'none',
    method: 'visual, ten power glass',
    signer: { name: 'M. Orne', certificate: 'ZQ-M-114' },
  });
  b.add('list_checked', a, '2026-11-20', { authority: 'Air Safety Board', by: 'M. Orne' }, { evidence: 'seen' });
  return b.entries;
}

/** Its hour meter rolled over at 999.9 and was replaced by one that starts with hours on it. */
function kta(): Entries {
  const a = 'aircraft:0530';
  const b = new Book('KTA', 'Logbook ZQ-KTA');
  b.add('aircraft', a, '2002-06-18', {
    registration: 'ZQ-KTA',
    ...W4,
    serial: '0530',
    built: '2002-06-18',
    owner: 'J. Pell',
    base: 'Harrow Mere',
  });
  wings(b, '0530', '2002-06-18', a);
  doubler(b, '0530', '2002-06-18');
  b.add('meter', a, '2002-06-18', { meter: 'hour_meter_1', counts: 'airborne', shows_h: 0, rolls_over_at_h: 1000 });
  b.add('use', a, '2002-06-18', { from: '2002-06-18', use: 'private' });
  const shown: [string, number, number][] = [
    ['2003-06-12', 84.2, 205],
    ['2004-06-10', 171.3, 410],
    ['2006-06-12', 352.8, 860],
    ['2008-06-15', 540.1, 1311],
    ['2010-06-11', 733.6, 1790],
    ['2012-06-14', 915.2, 2240],
    ['2014-06-12', 88.4, 2665],
    ['2016-06-13', 251.0, 3070],
  ];
  for (const [day, shows_h, landings] of shown) b.add('reading', a, day, { meter: 'hour_meter_1', shows_h, landings });
  b.add('meter', a, '2016-06-14', { meter: 'hour_meter_2', counts: 'airborne', shows_h: 12.6, rolls_over_at_h: 10000 });
  for (const [day, shows_h, landings] of [
    ['2018-06-11', 160.1, 3420],
    ['2020-06-15', 262.7, 3661],
    ['2022-06-13', 391.2, 3990],
    ['2024-06-10', 530.9, 4342],
    ['2026-06-09', 668.3, 4690],
  ] as [string, number, number][])
    b.add('reading', a, day, { meter: 'hour_meter_2', shows_h, landings });
  const letter = { paper: { title: 'Letter AM-3 of the Air Safety Board (invented)' } };
  const reference = 'AM-3';
  const conditions = 'The doubler is looked at with a ten power glass at each annual inspection';
  b.add(
    'alternative',
    a,
    '2024-02-01',
    { reference, directive: 'W-9', action: 'look_again', conditions, extends_by_h: 200 },
    letter,
  );
  b.add('revocation', a, '2025-09-01', { reference, because: 'Corrosion was found under a doubler' }, letter);
  return b.entries;
}

/** A tug until 2016, private since. */
function pem(): Entries {
  const a = 'aircraft:0588';
  const b = new Book('PEM', 'Logbook ZQ-PEM');
  b.add('aircraft', a, '2003-09-01', {
    registration: 'ZQ-PEM',
    ...W4T,
    serial: '0588',
    built: '2003-09-01',
    owner: 'Stenna Flyers',
    base: 'Stenna',
  });
  wings(b, '0588', '2003-09-01', a, { left: '1102', right: '1103' });
  doubler(b, '0588', '2003-09-01');
  b.add('use', a, '2003-09-01', {
    from: '2003-09-01',
    to: '2016-04-30',
    split: [{ use: 'tow', hours_h: 610, landings: 2620 }],
    rest: 'private',
  });
  b.add('use', a, '2016-05-01', { from: '2016-05-01', use: 'private' });
  b.readings(a, yearly({ day: '2003-10-01', total_h: 6, landings: 14 }, 12, { hours: 118, landings: 260 }));
  b.readings(a, [['2016-04-30', 1490.4, 3300]]);
  b.readings(a, yearly({ day: '2016-10-02', total_h: 1512, landings: 3340 }, 10, { hours: 44, landings: 72 }));
  // One line of the book, typed for both sides: it names the left spar.
  for (const side of ['L', 'R'])
    b.add(
      'accomplished',
      `spar:0588-${side}`,
      '2026-10-20',
      {
        directive: 'W-14',
        issue: 2,
        action: 'first_look',
        finding: 'none',
        method: 'eddy current, left spar 1102',
        signer: { name: 'M. Orne', certificate: 'ZQ-M-114' },
      },
      { paper: { title: 'Logbook ZQ-PEM', page: '61', row: 4 } },
    );
  return b.entries;
}

/** A salvage spar went into the right wing in 2019; what it had lived before is a stated shop policy. */
function sal(): Entries {
  const a = 'aircraft:0391';
  const b = new Book('SAL', 'Logbook ZQ-SAL');
  b.add('aircraft', a, '1999-05-20', {
    registration: 'ZQ-SAL',
    ...W4,
    serial: '0391',
    built: '1999-05-20',
    owner: 'D. Amsel',
    base: 'Harrow Mere',
  });
  wings(b, '0391', '1999-05-20', a);
  doubler(b, '0391', '1999-05-20');
  b.add('use', a, '1999-05-20', { from: '1999-05-20', use: 'private' });
  b.readings(a, yearly({ day: '1999-06-01', total_h: 2, landings: 6 }, 20, { hours: 88, landings: 180 }));
  b.add('removal', 'spar:0391-R', '2019-09-03', { to: 'scrap' }, { order: 10 });
  b.add(
    'part',
    'spar:salvage-77',
    '2019-09-03',
    { part: 'inboard_spar', hand: 'right', part_number: 'W4-5710', stamp: '0977', built: '2001-01-01' },
    { evidence: 'seen', paper: { title: 'Receiving list 77' } },
  );
  b.add(
    'opening',
    'spar:salvage-77',
    '2019-09-03',
    {
      basis: 'shop_policy',
      hours_h: { low_h: 900, high_h: 3000 },
      landings: { low: 1800, high: 6600 },
      because: 'The yard had no papers: the shop takes the highest life of its year of build',
    },
    { evidence: 'assumed', order: 1 },
  );
  b.add(
    'fitment',
    'spar:salvage-77',
    '2019-09-03',
    { into: 'wing:0391-R', place: 'right_inboard_spar' },
    { order: 11 },
  );
  b.readings(a, yearly({ day: '2019-10-01', total_h: 1790, landings: 3660 }, 7, { hours: 61, landings: 120 }));
  return b.entries;
}

/** Known only from a telephone call. */
function tel(): Entries {
  const a = 'aircraft:0702';
  const b = new Book('TEL', 'Telephone call');
  const said = { evidence: 'statement' as const, paper: { title: 'Telephone call with V. Karst, 23 Nov 2026' } };
  b.add(
    'aircraft',
    a,
    '2007-01-01',
    { registration: 'ZQ-TEL', ...W4, serial: '0702', built: '2007-01-01', owner: 'V. Karst' },
    said,
  );
  wings(b, '0702', '2007-01-01', a);
  doubler(b, '0702', '2007-01-01');
  b.add('reading', a, '2026-11-23', { total_h: 3120 }, said);
  b.add(
    'gap',
    a,
    '2007-01-01',
    { from: '2007-01-01', to: '2026-11-23', because: 'No paper was seen yet', paper_wanted: 'All logbooks of ZQ-TEL' },
    said,
  );
  return b.entries;
}

/** Aerobatic two-seater with a missing year: the missing-paper clause of W-21 acts. */
function abr(): Entries {
  const a = 'aircraft:2031';
  const b = new Book('ABR', 'Logbook ZQ-ABR');
  b.add('aircraft', a, '2010-02-08', {
    registration: 'ZQ-ABR',
    ...W2A,
    serial: '2031',
    built: '2010-02-08',
    owner: 'Loop Hill Aerobatics',
    base: 'Loop Hill',
  });
  wings(b, '2031', '2010-02-08', a);
  b.add('use', a, '2010-02-08', {
    from: '2010-02-08',
    to: '2017-12-31',
    split: [{ use: 'aerobatic', hours_h: 410 }],
    rest: 'instruction',
  });
  b.add('gap', a, '2018-01-01', {
    from: '2018-01-01',
    to: '2018-12-31',
    because: 'The club computer was stolen',
    paper_wanted: 'Flight sheets of 2018',
  });
  b.add('use', a, '2019-01-01', {
    from: '2019-01-01',
    split: [{ use: 'aerobatic', hours_h: 360 }],
    rest: 'instruction',
  });
  b.readings(a, yearly({ day: '2010-12-31', total_h: 84, landings: 190 }, 15, { hours: 112, landings: 260 }));
  b.add('reading', a, '2026-10-30', { total_h: 1868.2, landings: 4290 }, { order: 9 });
  return b.entries;
}

/** A school aircraft, much flown. */
function dov(): Entries {
  const a = 'aircraft:0655';
  const b = new Book('DOV', 'Logbook ZQ-DOV');
  b.add('aircraft', a, '2006-08-14', {
    registration: 'ZQ-DOV',
    ...W4,
    serial: '0655',
    built: '2006-08-14',
    owner: 'Fennel Flight School',
    base: 'Fennel',
  });
  wings(b, '0655', '2006-08-14', a, { left: '1260', right: '1261' });
  doubler(b, '0655', '2006-08-14');
  b.add('use', a, '2006-08-14', { from: '2006-08-14', use: 'instruction' });
  b.readings(a, yearly({ day: '2006-09-01', total_h: 12, landings: 40 }, 20, { hours: 268, landings: 412 }));
  b.add('event', a, '2021-05-06', {
    event: 'hard_landing',
    detail: 'Reported by the instructor; inspected, nothing found',
  });
  b.add('reading', a, '2026-11-10', { total_h: 5402.5, landings: 8410 }, { order: 9 });
  b.add('accomplished', 'doubler:0655-R', '2026-09-01', {
    directive: 'W-9',
    issue: 1,
    action: 'look_again',
    finding: 'none',
    method: 'visual, ten power glass',
    signer: { name: 'M. Orne', certificate: 'ZQ-M-114' },
  });
  return b.entries;
}

/** One approved alternative for two aircraft: straps instead of looks. */
function straps(b: Book, a: string): void {
  b.add(
    'alternative',
    a,
    '2025-02-10',
    {
      reference: 'AM-7',
      directive: 'W-14',
      action: 'first_look',
      conditions: 'Steel straps are fitted at both inboard spars and looked at every 100 h',
      ends_action: true,
    },
    { paper: { title: 'Letter AM-7 of the Air Safety Board (invented)' } },
  );
}

/** Little flown, with idle years. */
function fen(): Entries {
  const a = 'aircraft:0499';
  const b = new Book('FEN', 'Logbook ZQ-FEN');
  b.add('aircraft', a, '2001-04-04', {
    registration: 'ZQ-FEN',
    ...W4,
    serial: '0499',
    built: '2001-04-04',
    owner: 'A. Brill',
    base: 'Marsh End',
  });
  wings(b, '0499', '2001-04-04', a);
  doubler(b, '0499', '2001-04-04');
  b.add('use', a, '2001-04-04', { from: '2001-04-04', use: 'private' });
  b.readings(a, [
    ['2001-10-02', 11.4, 25],
    ['2003-04-01', 61.2, 133],
    ['2006-04-04', 142.7, 300],
    ['2009-04-02', 142.7, 300],
    ['2012-04-09', 190.3, 402],
    ['2015-04-07', 254.8, 533],
    ['2018-04-05', 254.8, 533],
    ['2021-04-08', 281.1, 588],
    ['2024-04-10', 334.4, 696],
    ['2026-04-15', 361.9, 752],
  ]);
  straps(b, a);
  return b.entries;
}

/** Survey work at low level, two books, one carried total that slips by ten hours. */
function gul(): Entries {
  const a = 'aircraft:0571';
  const b = new Book('GUL', 'Logbook ZQ-GUL');
  b.add('aircraft', a, '2003-02-17', {
    registration: 'ZQ-GUL',
    ...W4,
    serial: '0571',
    built: '2003-02-17',
    owner: 'Cormer Mapping',
    base: 'Cormer',
  });
  wings(b, '0571', '2003-02-17', a);
  doubler(b, '0571', '2003-02-17');
  b.add('use', a, '2003-02-17', { from: '2003-02-17', use: 'survey' });
  b.readings(a, yearly({ day: '2003-03-01', total_h: 9, landings: 8 }, 22, { hours: 190, landings: 120 }));
  b.add('flights', a, '2025-06-30', { from: '2025-03-02', hours_h: 61.4, landings: 38, use: 'survey' });
  b.add('reading', a, '2026-03-01', { total_h: 4370, landings: 2760 }, { order: 9 });
  b.add('accomplished', 'doubler:0571-R', '2026-03-01', {
    directive: 'W-9',
    issue: 1,
    action: 'look_again',
    finding: 'none',
    method: 'visual, ten power glass',
    signer: { name: 'M. Orne', certificate: 'ZQ-M-114' },
  });
  straps(b, a);
  b.add(
    'alternative',
    'doubler:0571-R',
    '2026-03-02',
    {
      reference: 'AM-12',
      directive: 'W-9',
      action: 'look_again',
      conditions: 'The edge of the doubler stays sealed',
      extends_by_h: 100,
      expires: '2027-04-30',
    },
    { paper: { title: 'Letter AM-12 of the Air Safety Board (invented)' } },
  );
  return b.entries;
}

/** A tug that flew past the limit. */
function jay(): Entries {
  const a = 'aircraft:0433';
  const b = new Book('JAY', 'Logbook ZQ-JAY');
  b.add('aircraft', a, '2000-07-07', {
    registration: 'ZQ-JAY',
    ...W4T,
    serial: '0433',
    built: '2000-07-07',
    owner: 'Tolva Gliding Club',
    base: 'Tolva',
  });
  wings(b, '0433', '2000-07-07', a, { left: '0871', right: '0872' });
  doubler(b, '0433', '2000-07-07');
  b.add('use', a, '2000-07-07', { from: '2000-07-07', use: 'tow' });
  b.readings(a, yearly({ day: '2000-08-01', total_h: 4, landings: 16 }, 26, { hours: 58, landings: 240 }));
  b.add(
    'permit',
    a,
    '2026-11-23',
    {
      reference: 'FP-118',
      issued_by: 'Air Safety Board (invented)',
      conditions: 'One flight from Tolva to Ostrey Field, by day, crew only, no tow',
      directive: 'W-14',
      expires: '2026-12-11',
    },
    { evidence: 'seen', paper: { title: 'Ferry permit FP-118' } },
  );
  b.add('list_checked', a, '2026-05-04', { authority: 'Air Safety Board', by: 'M. Orne' }, { evidence: 'seen' });
  return b.entries;
}

/** Nearly new. */
function owl(): Entries {
  const a = 'aircraft:2077';
  const b = new Book('OWL', 'Logbook ZQ-OWL');
  b.add('aircraft', a, '2022-05-16', {
    registration: 'ZQ-OWL',
    ...W2A,
    serial: '2077',
    built: '2022-05-16',
    owner: 'S. Ireth',
    base: 'Loop Hill',
  });
  wings(b, '2077', '2022-05-16', a);
  b.add('use', a, '2022-05-16', { from: '2022-05-16', split: [{ use: 'aerobatic', hours_h: 52 }], rest: 'private' });
  b.readings(a, [
    ['2023-05-10', 48.1, 96],
    ['2024-05-13', 101.5, 210],
    ['2025-05-12', 160.3, 331],
    ['2026-05-11', 214.9, 450],
  ]);
  return b.entries;
}

/** Outboard spars of the two-seaters, which W-21 looks at. */
function outboard(serial: string, built: string): Entries {
  const b = new Book(`OUT${serial}`, 'Build list of the type (invented)');
  for (const [hand, side] of [
    ['left', 'L'],
    ['right', 'R'],
  ] as const) {
    b.add(
      'part',
      `outer:${serial}-${side}`,
      built,
      { part: 'outboard_spar', hand, part_number: 'W2-5820', built },
      { evidence: 'assumed' },
    );
    b.add(
      'fitment',
      `outer:${serial}-${side}`,
      built,
      { into: `wing:${serial}-${side}`, place: `${hand}_outboard_spar` },
      { evidence: 'assumed', order: 3 },
    );
  }
  return b.entries;
}

/** Two spars on the shelf of the shop. */
function shelf(): Entries {
  const b = new Book('SHELF', 'Stores list of the shop');
  b.add(
    'part',
    'spar:shelf-1',
    '2024-02-01',
    { part: 'inboard_spar', hand: 'left', part_number: 'W4-5710', serial: 'N-2290', built: '2024-01-10' },
    { evidence: 'seen' },
  );
  b.add('opening', 'spar:shelf-1', '2024-02-01', { basis: 'new', hours_h: 0, landings: 0 }, { evidence: 'seen' });
  b.add(
    'part',
    'spar:shelf-2',
    '2022-06-20',
    { part: 'inboard_spar', hand: 'right', part_number: 'W4-5700', stamp: '0544', built: '1998-01-01' },
    { evidence: 'seen' },
  );
  b.add(
    'opening',
    'spar:shelf-2',
    '2022-06-20',
    { basis: 'donor_record', hours_h: 1411.5, landings: 2890, uses: { private: { hours_h: 1411.5, landings: 2890 } } },
    { evidence: 'copy' },
  );
  return b.entries;
}

export const fleet = (): Entries =>
  [lmb, hrn, kta, pem, sal, tel, abr, dov, fen, gul, jay, owl, shelf]
    .flatMap((f) => f())
    .concat(outboard('2031', '2010-02-08'), outboard('2077', '2022-05-16'));
