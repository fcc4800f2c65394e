import { describe, expect, it } from 'vitest';
import type { Day } from '../foundation/day.ts';
import { answerRecord, entriesFromCall, lifeOf, modelOf, readCall, readRecord, zEntry } from './index.ts';
import { A, aircraft, entry, figures, hours, model, reading, use } from './testing/write.ts';

const codes = (m: { findings: readonly { code: string }[] }) => m.findings.map((f) => f.code);
const exact = (n: number) => ({ low: n, high: n });

describe('an aircraft', () => {
  it('lives what its totals say, all in the stated use', () => {
    const m = model([
      aircraft(),
      use('2000-01-01', undefined, 'tow'),
      reading('2001-01-01', 100, 300),
      reading('2002-01-01', 250, 700),
    ]);
    const life = lifeOf(m, A, { until: m.day });
    expect(figures(m, A, ['hours.total', 'hours.tow', 'hours.private', 'landings.tow'])).toEqual([
      exact(250),
      exact(250),
      exact(0),
      exact(700),
    ]);
    expect(life.region.variables.filter((v) => !v.name.startsWith('inspections'))).toEqual([]);
    expect(life.stale).toBe(true);
    expect(life.lastReading).toMatchObject({ day: '2002-01-01', total_s: 900_000, landings: 700 });
    expect(life.at(m.day)['age.days']).toEqual({ constant: 7305, terms: [] });
  });

  it('may have flown any use where no paper says which', () => {
    const m = model([aircraft(), reading('2001-01-01', 100, 300)]);
    expect(figures(m, A, ['hours.total', 'hours.tow', 'landings.tow'])).toEqual([
      exact(100),
      { low: 0, high: 100 },
      { low: 0, high: 300 },
    ]);
    const life = lifeOf(m, A, { until: m.day });
    expect(life.gaps[0]).toMatchObject({ from: '2000-01-01', to: '2001-01-01', what: ['uses'] });
    expect(codes(life)).toContain('record.uncovered-use');
  });

  it('keeps hours exact in a declared gap between readings, uses and inspections open', () => {
    const gap = entry('gap', A, '2001-01-02', {
      from: '2001-01-02',
      to: '2002-01-01',
      because: 'Book lost',
      paper_wanted: 'Book 2',
    });
    const m = model([
      aircraft(),
      use('2000-01-01', undefined, 'private'),
      reading('2001-01-01', 100, 300),
      gap,
      reading('2002-01-01', 250, 700),
    ]);
    expect(figures(m, A, ['hours.total', 'hours.tow', 'landings.tow', 'inspections.annual'])).toEqual([
      exact(250),
      { low: 0, high: 150 },
      { low: 0, high: 400 },
      { low: 0, high: 7 },
    ]);
    expect(lifeOf(m, A, { until: m.day }).gaps[0]).toMatchObject({
      id: gap.id,
      papers: ['Book 2'],
      what: ['uses', 'inspections'],
    });
  });

  it('bounds a gap that no reading closes by the ceiling', () => {
    const gap = entry('gap', A, '2001-01-02', { from: '2001-01-02', to: '2001-01-11', because: 'Book lost' });
    expect(
      hours(model([aircraft(), use('2000-01-01', undefined, 'private'), reading('2001-01-01', 100), gap])),
    ).toEqual({ low: 100, high: 180 });
  });

  it('without any paper is bounded by the ceiling alone, and says so', () => {
    const m = model([aircraft('2019-12-22')]);
    expect(hours(m)).toEqual({ low: 0, high: 80 });
    expect(codes(lifeOf(m, A, { until: m.day }))).toContain('record.no-reading');
  });

  it('shares hours between readings on both sides of a cut, within the ceiling', () => {
    const m = model([
      aircraft(),
      use('2000-01-01', undefined, 'private'),
      reading('2001-01-01', 100),
      reading('2001-01-11', 160),
    ]);
    const [b] = figures(m, A, ['hours.total'], '2001-01-03' as Day);
    expect(b).toEqual({ low: 100, high: 116 });
    const life = lifeOf(m, A, { until: m.day, cuts: ['2001-01-03' as Day] });
    expect(life.figure('hours.total', m.day).value).toEqual(exact(160));
  });

  it('splits a period as stated, the rest in the rest', () => {
    const split = entry('use', A, '2000-01-01', {
      from: '2000-01-01',
      split: [{ use: 'tow', hours_h: 40, landings: { low: 100, high: 200 } }],
      rest: 'private',
    });
    const m = model([aircraft(), split, reading('2001-01-01', 100, 300), reading('2002-01-01', 250, 700)]);
    expect(figures(m, A, ['hours.tow', 'hours.private', 'landings.tow', 'hours.hire'])).toEqual([
      exact(40),
      exact(210),
      { low: 100, high: 200 },
      exact(0),
    ]);
  });

  it('takes overlapping statements of use on the wider side', () => {
    const split = (u: string) =>
      entry('use', A, '2000-01-01', { from: '2000-01-01', split: [{ use: u }], rest: 'private' });
    const m = model([aircraft(), split('tow'), split('hire'), reading('2001-01-01', 100)]);
    expect(figures(m, A, ['hours.tow', 'hours.hire'])).toEqual([
      { low: 0, high: 100 },
      { low: 0, high: 100 },
    ]);
  });
});

describe('flights', () => {
  const row = (day: string, h: number, n: number | undefined, u = 'tow') =>
    entry('flights', A, day, n === undefined ? { hours_h: h, use: u } : { hours_h: h, landings: n, use: u });
  it('carry a total on beyond the last reading', () => {
    const m = model([
      aircraft(),
      use('2000-01-01', '2001-01-01', 'private'),
      reading('2001-01-01', 100, 300),
      row('2001-02-01', 1.5, 4),
      row('2001-02-02', 0.5, 2),
    ]);
    expect(figures(m, A, ['hours.total', 'hours.tow', 'landings.total'])).toEqual([exact(102), exact(2), exact(306)]);
    expect(lifeOf(m, A, { until: m.day }).lastReading).toMatchObject({ total_s: 102 * 3600, landings: 306 });
  });
  it('that list less than the totals leave the rest open', () => {
    const m = model([aircraft(), row('2000-02-01', 10, 20), reading('2001-01-01', 100, 300)]);
    expect(codes(m)).toContain('record.uncovered-hours');
    expect(figures(m, A, ['hours.tow', 'hours.hire', 'landings.tow'])).toEqual([
      { low: 10, high: 100 },
      { low: 0, high: 90 },
      { low: 20, high: 300 },
    ]);
  });
  it('that list more than the totals are a slip; the declared total stands', () => {
    const m = model([
      aircraft(),
      row('2000-02-01', 80, 20),
      row('2000-03-01', 40, 10, 'hire'),
      reading('2000-04-01', 100, 30),
    ]);
    expect(codes(m)).toContain('record.carried-total-slip');
    expect(figures(m, A, ['hours.total', 'hours.tow'])).toEqual([exact(100), { low: 60, high: 80 }]);
  });
  it('landings that list more than the totals are a slip too', () => {
    const m = model([
      aircraft(),
      row('2000-02-01', 10, 50),
      row('2000-03-01', 10, 10, 'hire'),
      reading('2000-04-01', 20, 40),
    ]);
    expect(codes(m)).toContain('record.carried-landings-slip');
    expect(figures(m, A, ['landings.total', 'landings.tow'])).toEqual([exact(40), { low: 30, high: 40 }]);
  });
  it('of a month are shared by a cut through it', () => {
    const m = model([
      aircraft(),
      entry('flights', A, '2000-01-31', { from: '2000-01-01', hours_h: 30, landings: 60, use: 'tow' }),
    ]);
    const life = lifeOf(m, A, { until: m.day, cuts: ['2000-01-02' as Day] });
    expect(life.figure('hours.tow', '2000-01-02' as Day).value.high).toBeLessThanOrEqual(16);
    expect(life.figure('hours.tow', m.day).value).toEqual(exact(30));
  });
  it('more than 24 h on one day are a finding', () => {
    expect(codes(model([aircraft(), row('2000-02-01', 13, 1), row('2000-02-01', 12, 1)]))).toContain(
      'record.more-than-24-hours-a-day',
    );
  });
  it('ten thousand rows are read and lived in less than a second', () => {
    const rows = Array.from({ length: 10_000 }, (_, i) => {
      const d = new Date(Date.UTC(2000, 0, 2 + Math.floor(i / 2))).toISOString().slice(0, 10);
      return row(d, 0.7, 2, i % 3 ? 'tow' : 'private');
    });
    const entries = [aircraft(), ...rows].map((e) => zEntry.parse(e));
    const t = performance.now();
    const m = modelOf({ day: '2020-01-01' as Day, entries });
    const life = lifeOf(m, A, { until: m.day, cuts: ['2005-06-01' as Day] });
    expect(life.figure('hours.total', m.day).value.high).toBeCloseTo(7000, 6);
    expect(performance.now() - t).toBeLessThan(1000);
  });
});

describe('meters', () => {
  const dial = (day: string, body: object, order = 0) =>
    entry('meter', A, day, { meter: 'm', counts: 'airborne', ...body } as never, { order });
  const shows = (day: string, h: number, more: object = {}) =>
    entry('reading', A, day, { meter: 'm', shows_h: h, ...more }, { order: 9 });
  const P = use('2000-01-01', undefined, 'private');
  it('are followed over a roll-over', () => {
    const m = model([
      aircraft(),
      P,
      dial('2000-01-01', { shows_h: 0, rolls_over_at_h: 1000 }),
      shows('2004-01-01', 900),
      shows('2005-01-01', 80),
    ]);
    expect(hours(m)).toEqual(exact(1080));
  });
  it.each([999.9, 999.99, 1000])('said to roll over at %s h, they turn at 1 000 h', (rolls_over_at_h) => {
    const m = [aircraft(), P, dial('2000-01-01', { rolls_over_at_h }), shows('2004-01-01', 999.5)];
    expect(hours(model([...m, shows('2005-01-01', 0.4)]))).toEqual(exact(1000.4));
  });
  it('that are changed on the day of a reading lose nothing; between readings, the days between are open', () => {
    const start = [aircraft(), P, dial('2000-01-01', {}), shows('2004-01-01', 900)];
    const n = (day: string) => [
      entry('meter', A, day, { meter: 'n', counts: 'airborne', shows_h: 12 }),
      entry('reading', A, '2005-01-01', { meter: 'n', shows_h: 112 }),
    ];
    expect(hours(model([...start, ...n('2004-01-01')]))).toEqual(exact(1000));
    expect(hours(model([...start, ...n('2004-01-03')]))).toEqual({ low: 1000, high: 1016 });
  });
  it('a tachometer gives bounds by its factor, which a later declared total closes', () => {
    const tach = [
      aircraft(),
      P,
      dial('2000-01-01', { counts: 'tachometer', service_per_hour: { low: 1, high: 1.2 } }),
      shows('2001-01-01', 100),
    ];
    expect(hours(model(tach))).toEqual({ low: 100, high: 120 });
    const later = [...tach, shows('2002-01-01', 200, { total_h: 215 })];
    expect(hours(model(later))).toEqual(exact(215));
    expect(hours(model(later), A, '2001-01-01')).toEqual({ low: 100, high: 120 });
  });
  it('without a factor, without a start, backwards and against the book are findings', () => {
    expect(codes(model([aircraft(), dial('2000-01-01', { counts: 'tachometer' })]))).toContain(
      'record.tachometer-without-factor',
    );
    expect(codes(model([aircraft(), shows('2001-01-01', 5)]))).toContain('record.meter-without-start');
    expect(
      codes(model([aircraft(), dial('2000-01-01', {}), shows('2001-01-01', 50), shows('2002-01-01', 40)])),
    ).toContain('record.meter-runs-backwards');
    const m = model([aircraft(), P, dial('2000-01-01', {}), shows('2001-01-01', 50, { total_h: 55 })]);
    expect(codes(m)).toContain('record.meter-disagrees');
    expect(hours(m)).toEqual(exact(55));
  });
});

describe('contradictions', () => {
  it('where totals cross, either may be right: the worse side counts until one is corrected', () => {
    const m = model([aircraft(), reading('2001-01-01', 100), reading('2002-01-01', 90)]);
    expect(codes(m)).toContain('record.totals-run-backwards');
    expect(hours(m)).toEqual({ low: 90, high: 100 });
    const slip = model([
      aircraft(),
      reading('2001-01-01', 100),
      reading('2002-01-01', 1900),
      reading('2003-01-01', 210),
      reading('2004-01-01', 220),
    ]);
    expect(hours(slip)).toEqual({ low: 220, high: 1910 });
    expect(slip.findings.find((f) => f.code === 'record.totals-run-backwards')?.entries).toHaveLength(2);
    const impossible = model([
      aircraft(),
      reading('2001-01-01', 100),
      reading('2001-01-03', 1900),
      reading('2003-01-01', 210),
      reading('2004-01-01', 220),
    ]);
    expect(hours(impossible)).toEqual(exact(220));
    const agreed = model([
      aircraft(),
      reading('2001-01-01', 1000),
      reading('2002-01-01', 120),
      reading('2003-01-01', 1200),
      reading('2004-01-01', 1300),
    ]);
    expect(hours(agreed)).toEqual(exact(1300));
  });
  it('more than 24 h a day and too many landings', () => {
    expect(codes(model([aircraft(), reading('2000-01-03', 60)]))).toContain('record.more-than-24-hours-a-day');
    const many = model([aircraft(), use('2000-01-01', undefined, 'tow'), reading('2001-01-01', 10, 500)]);
    expect(codes(lifeOf(many, A, { until: many.day }))).toContain('record.many-landings');
    expect(figures(many, A, ['landings.tow'])).toEqual([exact(500)]);
  });
  it('a part in two places, a place taken twice, the wrong hand, a removal from nowhere, an event on the shelf', () => {
    const spar = (id: string, hand: 'left' | 'right') =>
      entry('part', id, '2000-01-01', { part: 'spar', hand, built: '2000-01-01' });
    const put = (id: string, day: string, place: string, into = A) => entry('fitment', id, day, { into, place });
    const base = [aircraft(), aircraft('2000-01-01', 'aircraft:2'), spar('s:1', 'left'), spar('s:2', 'left')];
    expect(
      codes(
        model([...base, put('s:1', '2000-01-01', 'left_spar'), put('s:1', '2001-01-01', 'left_spar', 'aircraft:2')]),
      ),
    ).toContain('record.part-in-two-places');
    expect(
      codes(model([...base, put('s:1', '2000-01-01', 'left_spar'), put('s:2', '2001-01-01', 'left_spar')])),
    ).toContain('record.place-taken-twice');
    expect(codes(model([...base, put('s:1', '2000-01-01', 'right_spar')]))).toContain(
      'record.left-part-in-right-place',
    );
    expect(codes(model([...base, entry('removal', 's:1', '2001-01-01', {})]))).toContain(
      'record.removal-without-fitment',
    );
    const shelf = [
      put('s:1', '2000-01-01', 'left_spar'),
      entry('removal', 's:1', '2001-01-01', {}),
      entry('event', 's:1', '2002-01-01', { event: 'dropped' }),
    ];
    expect(codes(model([...base, ...shelf]))).toContain('record.event-while-not-fitted');
    expect(codes(model([aircraft(), put('s:9', '2001-01-01', 'left_spar')]))).toContain('record.subject-not-opened');
  });
});

describe('a part', () => {
  const spar = entry('part', 's', '2000-01-01', { part: 'spar', hand: 'left', built: '2000-01-01' });
  const wing = entry('part', 'w', '2000-01-01', { part: 'wing', hand: 'left', built: '2000-01-01' });
  const B = 'aircraft:2';
  const two = [
    aircraft(),
    aircraft('2000-01-01', B),
    use('2000-01-01', undefined, 'tow'),
    use('2000-01-01', undefined, 'private', B),
    reading('2001-01-01', 100, 300),
    reading('2002-01-01', 250, 700),
    reading('2002-01-01', 1000, 900, B),
    reading('2003-01-01', 1010, 920, B),
  ];
  it('takes its life along, through its holder, and lives nothing on the shelf', () => {
    const m = model([
      ...two,
      spar,
      wing,
      entry('fitment', 's', '2000-01-01', { into: 'w', place: 'left_spar' }),
      entry('fitment', 'w', '2000-01-01', { into: A, place: 'left_wing' }),
      entry('removal', 'w', '2001-01-01', {}, { order: 10 }),
      entry('fitment', 'w', '2002-01-01', { into: B, place: 'left_wing' }, { order: 10 }),
    ]);
    expect(figures(m, 's', ['hours.total', 'hours.tow', 'hours.private', 'landings.total'])).toEqual([
      exact(110),
      exact(100),
      exact(10),
      exact(320),
    ]);
    const life = lifeOf(m, 's', { until: m.day });
    expect(life.carrierAt(m.day)?.['hours.total']).toEqual({ constant: 1010, terms: [] });
    expect(life.carrierAt('2001-06-01' as Day)).toBeNull();
    expect(m.things.get('s')).toMatchObject({ aircraft: B, holder: { id: 'w', place: 'left_spar' }, identity: 'copy' });
  });
  it('brings its opening with it, as bounds', () => {
    const m = model([
      ...two,
      spar,
      entry('opening', 's', '2001-01-01', {
        basis: 'donor_record',
        hours_h: { low_h: 50, high_h: 80 },
        landings: 90,
        uses: { tow: { hours_h: 20 } },
      }),
      entry('fitment', 's', '2001-01-01', { into: A, place: 'left_spar' }, { order: 10 }),
    ]);
    expect(figures(m, 's', ['hours.total', 'hours.tow', 'hours.hire', 'landings.total'])).toEqual([
      { low: 200, high: 230 },
      exact(170),
      { low: 0, high: 60 },
      exact(490),
    ]);
  });
  it('fitted late without an opening is unknown before, not new: up to 1 200 h a year and a busy month', () => {
    const m = model([
      ...two,
      spar,
      entry('fitment', 's', '2002-01-01', { into: A, place: 'left_spar' }, { order: 10 }),
    ]);
    const [b] = figures(m, 's', ['hours.total']);
    expect(b).toEqual({ low: 0, high: Math.round((731 * (1200 / 365.25) + 31 * 8) * 3600) / 3600 });
    expect(codes(lifeOf(m, 's', { until: m.day }))).toContain('record.no-opening');
  });
  it('that sits nowhere says so', () => {
    const m = model([...two, spar]);
    expect(codes(lifeOf(m, 's', { until: m.day }))).toContain('record.not-fitted');
  });
  it('counts events, kits and inspections of what carries it, while it is there', () => {
    const m = model([
      ...two,
      spar,
      entry('fitment', 's', '2000-01-01', { into: A, place: 'left_spar' }),
      entry('event', A, '2001-01-01', { event: 'hard_landing' }, { order: 10 }),
      entry('kit', A, '2001-01-01', { kit: 'tip', action: 'fitted' }, { order: 10 }),
      entry('inspection', A, '2001-01-01', { wording: 'Annual / 100-hour' }),
      entry('inspection', A, '2002-01-01', { wording: 'annual /  100-hour' }),
      entry('inspection', A, '2002-01-01', { wording: 'Looked over' }),
      entry('ruling', 'shop', '2003-01-01', {
        wording: 'annual / 100-hour',
        counts_as: ['annual', 'hundred_hour'],
        by: 'M. Orne',
        because: 'entered as both',
      }),
    ]);
    const facts = [
      'since.hard_landing.hours',
      'since.hard_landing.landings',
      'count.hard_landing',
      'kit.tip.hours',
      'inspections.annual',
    ];
    expect(figures(m, 's', facts)).toEqual([exact(150), exact(400), exact(1), exact(150), { low: 2, high: 3 }]);
    const life = lifeOf(m, 's', { until: m.day, cuts: ['2000-06-01' as Day] });
    expect(life.at('2000-06-01' as Day)['since.hard_landing.hours']).toBeUndefined();
    expect(codes(life)).toContain('record.wording-not-ruled');
    expect(life.figure('inspections.annual', m.day).working.some((s) => s.formula.includes('M. Orne'))).toBe(true);
  });
});

describe('corrections', () => {
  it('replace, and keep the old entry to be read', () => {
    const wrong = reading('2001-01-01', 1000);
    const m = model([aircraft(), wrong, { ...reading('2001-01-01', 100), replaces: wrong.id }]);
    expect(hours(m)).toEqual(exact(100));
    expect(m.replaced.map((e) => e.id)).toEqual([wrong.id]);
  });
  it('twice of one entry are a finding', () => {
    const wrong = reading('2001-01-01', 1000);
    expect(
      codes(
        model([aircraft(), wrong, ...[100, 110].map((h) => ({ ...reading('2001-01-01', h), replaces: wrong.id }))]),
      ),
    ).toContain('record.replaced-twice');
  });
});

describe('a caller', () => {
  const call = { sparwright: 'call/1', day: '2020-01-01', registration: 'ZZ-ABC', type: 'T', model: 'M' };
  it('gives statements and the papers to ask for; what he does not know is on the worse side', () => {
    const {
      aircraft: id,
      entries,
      papersToAsk,
    } = entriesFromCall(readCall({ ...call, total_h: 3000, built_year: 1990, wing_changed: 'no' }));
    const m = model(entries);
    expect(figures(m, id, ['hours.total', 'hours.tow'])).toEqual([exact(3000), { low: 0, high: 3000 }]);
    expect(figures(m, 'spar:ZZ-ABC-L', ['hours.total'])).toEqual([exact(3000)]);
    expect(papersToAsk[0]).toContain('All logbooks');
    expect(entries.every((e) => e.evidence !== 'copy' && e.evidence !== 'seen')).toBe(true);
  });
  it('who names years of use and no missing book narrows them; a wing that may have changed is open', () => {
    const full = {
      ...call,
      total_h: 3000,
      landings: 6000,
      built_year: 1990,
      uses: [
        { use: 'tow', from_year: 1990, to_year: 1999 },
        { use: 'hire', from_year: 1995, to_year: 2019 },
      ],
      missing_books: [],
      kits: ['tip'],
      repairs: 'Skin patch',
    };
    const { aircraft: id, entries } = entriesFromCall(readCall(full));
    const m = model(entries);
    expect(figures(m, id, ['hours.survey', 'hours.tow', 'hours.hire'])).toEqual(
      [exact(0), { low: 0, high: 3000 }, { low: 0, high: 3000 }].map((b, n) => (n === 0 ? { low: 0, high: 8 } : b)),
    );
    expect(figures(m, 'spar:ZZ-ABC-L', ['hours.total'])[0]!.high).toBe(39_247);
  });
  it('who knows nothing still gets an answer', () => {
    const { aircraft: id, entries } = entriesFromCall(
      readCall({ ...call, total_h: 'unknown', built_year: 'unknown', uses: 'unknown', missing_books: 'unknown' }),
    );
    expect(hours(model(entries), id).low).toBe(0);
  });
});

it('answers a document with bounds, findings and working', () => {
  const d = readRecord({
    sparwright: 'record/1',
    day: '2020-01-01',
    invented: true,
    entries: [aircraft(), reading('2001-01-01', 100, 300)],
  });
  const a = answerRecord(d);
  expect(a.value.lives[0]).toMatchObject({
    subject: A,
    hours_h: exact(100),
    landings: exact(300),
    stale: true,
    as_of: '2001-01-01',
  });
  expect(a.value.lives[0]!.hours_by_use_h.tow).toEqual({ low: 0, high: 100 });
  expect(a.working.length).toBeGreaterThan(0);
  expect(a.warnings.join()).toContain('made up');
});
