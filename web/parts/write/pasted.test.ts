import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactFigureOf, readPasted } from './pasted.ts';

const rows = (text: string, decimal?: '.' | ',') => readPasted(text, decimal).rows;

describe('a table as a person pastes it', () => {
  it.each([
    [
      'tabs, with a heading',
      'level\ttimes per hour\n0.1\t120\n0.2\t17.5\n',
      2,
      [
        [0.1, 120],
        [0.2, 17.5],
      ],
    ],
    [
      'tabs and decimal commas',
      '0,1\t120\n0,25\t17,5',
      2,
      [
        [0.1, 120],
        [0.25, 17.5],
      ],
    ],
    [
      'semicolons and decimal commas',
      '0,1;120\n0,2;1.250,5',
      2,
      [
        [0.1, 120],
        [0.2, 1250.5],
      ],
    ],
    [
      'commas between columns',
      '0.1,120\n0.2,17.5',
      2,
      [
        [0.1, 120],
        [0.2, 17.5],
      ],
    ],
    [
      'blanks between columns',
      '0.1   120\n 0.2 17.5 ',
      2,
      [
        [0.1, 120],
        [0.2, 17.5],
      ],
    ],
    [
      'blanks and decimal commas',
      '0,1 120\n0,2 17,5',
      2,
      [
        [0.1, 120],
        [0.2, 17.5],
      ],
    ],
    [
      'exponents and signs',
      '1e-3\t2.5E+04\n−0.5\t.25',
      2,
      [
        [0.001, 25000],
        [-0.5, 0.25],
      ],
    ],
    [
      'thousands set apart by a thin space',
      '0.1\t12 000\n0.2\t1 700',
      2,
      [
        [0.1, 12000],
        [0.2, 1700],
      ],
    ],
    [
      'commas between thousands beside points',
      '0.5\t1,200\n1.5\t12,000,000',
      2,
      [
        [0.5, 1200],
        [1.5, 12e6],
      ],
    ],
    [
      'three columns and a heading with figures in it',
      'level,up per 1000 h,down\n0.1,5,6\n0.2,3,4',
      3,
      [
        [0.1, 5, 6],
        [0.2, 3, 4],
      ],
    ],
    [
      'an empty last column, empty lines and remarks',
      '# counted\n0.1\t5\t\n\n0.2\t3\t\n',
      2,
      [
        [0.1, 5],
        [0.2, 3],
      ],
    ],
  ])('%s', (_, text, width, expected) => {
    const read = readPasted(text);
    expect(read).toMatchObject({ rows: expected, ask: false, wrong: [] });
    for (const r of read.rows) expect(r).toHaveLength(width);
  });
  it('one and two thousand, or one point two: it is asked, and the answer counts', () => {
    const text = '1,200\t3,500\n2,400\t1,250';
    expect(readPasted(text).ask).toBe(true);
    expect(rows(text, ',')).toEqual([
      [1.2, 3.5],
      [2.4, 1.25],
    ]);
    expect(rows(text, '.')).toEqual([
      [1200, 3500],
      [2400, 1250],
    ]);
    expect(readPasted(text, '.').ask).toBe(false);
  });
  it('four whole figures between commas may be two with decimals: it is asked', () => {
    const text = '0,1,120,0\n0,2,17,5';
    expect(readPasted(text).ask).toBe(true);
    expect(rows(text, ',')).toEqual([
      [0.1, 120],
      [0.2, 17.5],
    ]);
  });
  it('what does not read is told with its line', () => {
    expect(readPasted('0.1\t5\n0.2\tmany\n0.3\t1').wrong).toEqual([
      { line: 2, text: '0.2\tmany', because: 'holds a cell that is no figure' },
    ]);
    expect(readPasted('0.1\t5\n0.2\n0.3\t1').wrong[0]!.because).toMatch(/1 lines have another number of columns/);
    expect(readPasted('just words')).toMatchObject({ rows: [], heading: ['just words'] });
    expect(readPasted('')).toMatchObject({ rows: [], heading: null, wrong: [] });
  });
  it('whatever a program writes with tabs comes back as it was', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer()), { minLength: 1 }),
        (table) => {
          const text = table.map((r) => r.join('\t')).join('\n');
          expect(rows(text)).toEqual(table.map((r) => r.map((n) => n + 0 || 0)));
        },
      ),
    );
  });
  it('anything may be pasted, and no figure is ever not finite', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom(undefined, '.' as const, ',' as const), (text, decimal) => {
        for (const n of readPasted(text, decimal).rows.flat()) expect(Number.isFinite(n)).toBe(true);
      }),
    );
  });
});

describe('a figure of any size', () => {
  it.each([
    ['1.66e-11', 1.66e-11],
    ['.5', 0.5],
    ['−3', -3],
    ['12 000', 12000],
    ['1e999', '1e999'],
    ['4,5', '4,5'],
    ['1.2.3', '1.2.3'],
    ['', ''],
  ])('%s', (text, value) => expect(exactFigureOf(text)).toBe(value));
});
