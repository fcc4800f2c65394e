import { describe, expect, it } from 'vitest';
import type { TeardownInput } from '../document.ts';
import { reassemble } from './index.ts';
import { positions, walk } from './testing/replayed.ts';
import { MADE_UP, row, SPAR_OUT, smallJob, smallMap, t } from './testing/small-wing.ts';

const measured = (web_mm: number): Partial<TeardownInput> => ({
  edge_distances: [
    { join: 'web', part: 'spar', least_mm: web_mm, from: MADE_UP },
    { join: 'nose-row', part: 'spar', least_mm: 9, from: MADE_UP },
  ],
});
const ids = (operations: readonly { id: string }[]) => operations.map((o) => o.id);

describe('a new spar', () => {
  const document = smallJob(measured(7));
  const { operations, findings } = reassemble(document, SPAR_OUT);

  it('goes up dry, comes apart, goes up wet: the sequence of the trade', () => {
    expect(ids(operations)).toEqual([
      'put:spar',
      'clip:web',
      'put:nose',
      'clip:nose-row',
      'support:jig',
      'jig_check:jig',
      'edge_check:spar',
      'drill:nose-row',
      'drill:web',
      'unclip:nose-row',
      'unclip:web',
      'apart:nose',
      'apart:spar',
      'deburr:nose-row',
      'deburr:web',
      'convert:spar',
      'prime:spar',
      'dry:spar',
      'refit:spar',
      'reclip:web',
      'refit:nose',
      'reclip:nose-row',
      'jig_recheck:jig',
      'close:web',
      'close:nose-row',
      'release:jig',
      'closing_look:bay',
      'put:tank',
      'close:straps',
      'close:hang',
      'release:trestle',
    ]);
  });
  it('ends with everything fitted and every row closed', () =>
    expect(walk(operations, SPAR_OUT, document.map)).toEqual({ off: [], open: [] }));
  it('takes the times of the map: asymmetric counts, each kind of work its own', () => {
    const likely = Object.fromEntries(operations.map((o) => [o.id, o.minutes.likely_min]));
    expect(likely).toMatchObject({
      'clip:web': 2.5,
      'drill:nose-row': 10,
      'deburr:nose-row': 8,
      'close:nose-row': 40,
      'close:straps': 16,
      'put:spar': 20,
      'apart:spar': 10,
      'convert:spar': 38,
      'dry:spar': 720,
      'jig_check:jig': 30,
    });
  });
  it('holds the jig from the set-up to the release, and no hands while the primer dries', () => {
    const at = positions(operations);
    for (const o of operations) {
      const in_ = at.get(o.id)! >= at.get('support:jig')! && at.get(o.id)! < at.get('release:jig')!;
      expect([o.id, o.jig], o.id).toEqual([o.id, in_ || o.id === 'release:jig' ? 'wing-jig' : null]);
    }
    expect(operations.find((o) => o.id === 'dry:spar')).toMatchObject({ unattended: true, persons: 0, cents: 0 });
  });
  it('says only what no measuring settles where all is measured and long enough', () =>
    expect(findings.map((f) => f.code)).toEqual(['new-part-holes', 'attach-new-part']));
  it('never drills the attach bolts', () => expect(ids(operations)).not.toContain('drill:hang'));
});

describe('edge distance before the first drill', () => {
  it('not measured: the step stands there, and it is said which rows', () => {
    const { operations, findings } = reassemble(smallJob(), SPAR_OUT);
    expect(ids(operations)).toContain('edge_check:spar');
    expect(findings.find((f) => f.code === 'edge-not-measured')?.about).toEqual(['spar', 'nose-row', 'web']);
  });
  // AC 43.13-1B paragraph 4-57c(1): twice the diameter; 2 × 3.175 = 6.35 mm. Read.
  it.each([
    [6.35, []],
    [6.34, ['gate:edge-spar']],
  ])('least distance %s mm of a 3.175 mm rivet', (least, gates) => {
    const { operations, findings } = reassemble(smallJob(measured(least)), SPAR_OUT);
    expect(ids(operations).filter((id) => id.startsWith('gate:'))).toEqual(gates);
    expect(findings.some((f) => f.code === 'edge-too-short')).toBe(gates.length > 0);
    for (const o of operations.filter((x) => x.kind === 'drill'))
      expect(o.after).toEqual(expect.arrayContaining(['edge_check:spar', ...gates]));
  });
  it('an allowed distance of the document counts before the common one', () => {
    const [first, second] = measured(6).edge_distances!;
    const document = smallJob({ edge_distances: [{ ...first!, allowed_mm: 5.5 }, second!] });
    expect(reassemble(document, SPAR_OUT).findings.some((f) => f.code === 'edge-too-short')).toBe(false);
  });
});

describe('nothing new goes in', () => {
  const opened = { ...SPAR_OUT, replaced: [] };
  it('goes up once, measured before its rows are riveted', () => {
    const { operations } = reassemble(smallJob(), opened);
    expect(ids(operations)).toEqual([
      'put:spar',
      'clip:web',
      'put:nose',
      'clip:nose-row',
      'support:jig',
      'jig_check:jig',
      'close:web',
      'close:nose-row',
      'release:jig',
      'closing_look:bay',
      'put:tank',
      'close:straps',
      'close:hang',
      'release:trestle',
    ]);
    expect(walk(operations, opened, smallJob().map)).toEqual({ off: [], open: [] });
  });
  it('spoiled holes are drilled in a dry pass, only they', () => {
    const document = smallJob({
      recorded: [{ what: 'holes', join: 'web', elongated: 2, oversize: 1, on: '2026-12-02', by: 'somebody' }],
    });
    const { operations, findings } = reassemble(document, opened);
    expect(operations.filter((o) => o.kind === 'drill').map((o) => [o.id, o.minutes.likely_min])).toEqual([
      ['drill:web', 1.5],
    ]);
    expect(findings.find((f) => f.code === 'next-size')?.text).toContain('3 of 10 holes take the next size, 3.97 mm');
  });
  it('attach-bolt holes that are worn are a finding and are not opened', () => {
    const document = smallJob({
      recorded: [{ what: 'holes', join: 'hang', elongated: 1, oversize: 0, on: '2026-12-02', by: 'somebody' }],
    });
    const { operations, findings } = reassemble(document, opened);
    expect(operations.some((o) => o.kind === 'drill')).toBe(false);
    expect(findings.find((f) => f.code === 'attach-holes')?.about).toEqual(['hang']);
  });
});

describe('sealant', () => {
  const sealed = (working_life_min: number) => {
    const map = smallMap();
    map.joins[0] = row('web', ['skin', 'spar'], { sealant: { name: 'S', working_life_min, cure_h: 24 } });
    return reassemble(smallJob({ map }), SPAR_OUT);
  };
  it('is spread before the part goes in, riveted within its working life, and cures without hands', () => {
    const { operations, findings } = sealed(120);
    const wet = ids(operations).slice(ids(operations).indexOf('dry:spar') + 1);
    expect(wet.slice(0, 4)).toEqual(['seal:web', 'refit:spar', 'reclip:web', 'close:web']);
    expect(operations.find((o) => o.id === 'close:web')).toMatchObject({
      within: { of: 'seal:web', min: 100 },
      may_pause: false,
    });
    expect(operations.find((o) => o.id === 'cure:web')).toMatchObject({ unattended: true, after: ['close:web'] });
    expect(operations.find((o) => o.id === 'release:jig')?.after).toContain('cure:web');
    expect(findings.some((f) => f.code.startsWith('sealant'))).toBe(false);
  });
  it('a row that takes longer than its sealant works is a finding', () => {
    const { operations, findings } = sealed(20);
    expect(findings.map((f) => f.code)).toContain('sealant-short');
    expect(operations.find((o) => o.id === 'close:web')?.within).toEqual({ of: 'seal:web', min: 20 });
  });
  it('so is work between that leaves too little', () =>
    expect(sealed(30).findings.map((f) => f.code)).toContain('sealant-tight'));
});

describe('the order of going back', () => {
  it('keeps what must still be off: the row that is bucked through the nose is riveted before the nose is on', () => {
    const map = smallMap();
    map.joins[0] = row('web', ['skin', 'spar'], { jig_before_rivets: true, close_needs: ['off:nose'] });
    const { operations } = reassemble(smallJob({ map }), SPAR_OUT);
    const at = positions(operations);
    expect(at.get('close:web')!).toBeLessThan(at.get('refit:nose')!);
    expect(ids(operations).filter((i) => i.startsWith('jig_recheck'))).toEqual([
      'jig_recheck:jig',
      'jig_recheck:jig-2',
    ]);
  });
  it('takes either way where the map gives two', () => {
    const map = smallMap();
    map.joins[0] = row('web', ['skin', 'spar'], { close_needs: [{ any: ['off:panel', 'off:tank'] }] });
    const { operations, findings } = reassemble(smallJob({ map }), SPAR_OUT);
    const at = positions(operations);
    expect(at.get('close:web')!).toBeLessThan(at.get('put:tank')!);
    expect(findings.map((f) => f.code)).not.toContain('way-back-shut');
  });
  it('says what can never be reached on the way back', () => {
    const map = smallMap();
    map.joins[0] = row('web', ['skin', 'spar'], { close_needs: ['off:panel'] });
    expect(reassemble(smallJob({ map }), SPAR_OUT).findings.find((f) => f.code === 'way-back-shut')?.about).toEqual([
      'web',
    ]);
  });
  it('the way back that the kit states wins over closing rows last', () => {
    const map = smallMap();
    map.stated = [
      { name: 'kit', steps: ['off:tank'], back: ['open:nose-row', 'open:web'], only_if: 'spar', from: MADE_UP },
    ];
    const stated = reassemble(smallJob({ map }), SPAR_OUT);
    const at = positions(stated.operations);
    expect(at.get('close:nose-row')!).toBeLessThan(at.get('close:web')!);
    expect(stated.findings.find((f) => f.code === 'order-given-up')?.text).toContain('closing rows come last');
    const other = positions(reassemble(smallJob({ map }), { ...SPAR_OUT, replaced: [] }).operations);
    expect(other.get('close:nose-row')!).toBeGreaterThan(other.get('close:web')!);
  });
  it('what would hide a look of the plan waits for it', () => {
    const { operations } = reassemble(smallJob(), { ...SPAR_OUT, looks: ['bay'] });
    expect(operations.find((o) => o.id === 'put:tank')?.after).toContain('look:bay');
    expect(operations.find((o) => o.id === 'put:nose')?.after).not.toContain('look:bay');
  });
});

it('a missing time is said, and coating without data is assumed and said', () => {
  const map = smallMap();
  map.each = { solid_rivet: { open: t(1) }, bolt: { open: t(3) } };
  delete map.coating;
  const codes = reassemble(smallJob({ map }), SPAR_OUT).findings.map((f) => f.code);
  expect(codes.filter((c) => c === 'no-time').length).toBe(4);
  expect(codes).toContain('coating-assumed');
});

it.each([
  ['teardown.id-unknown', ['off:wheel']],
  ['teardown.id-twice', ['off:tank', 'off:tank']],
])('a stated way back with %s is refused', (code, back) => {
  const map = smallMap();
  map.stated = [{ name: 'kit', steps: ['off:tank'], back, from: MADE_UP }];
  expect(() => smallJob({ map })).toThrow(expect.objectContaining({ code }));
});
