import fc from 'fast-check';
import { expect, it } from 'vitest';
import { z } from 'zod';
import { problemsOf } from './draft-problem.ts';

const schema = z.strictObject({
  name: z.string().min(1),
  width_mm: z.number().positive().max(100),
  rows: z.array(z.strictObject({ stress_MPa: z.number().max(10) })).min(1),
});
const of = (input: unknown) => problemsOf(schema, input, 'the fields of a plate');

it('a whole document lacks nothing, in either unit', () => {
  expect(of({ name: 'x', width_mm: 5, rows: [{ stress_MPa: 1 }] })).toEqual([]);
  expect(of({ name: 'x', width_in: 2, rows: [{ stress_ksi: 1 }] })).toEqual([]);
});
it('each place is named in engine units; the figure as it was written, its bound with the unit', () => {
  expect(of({ width_in: 7, rows: [{ stress_MPa: 1 }, { stress_ksi: 30 }] })).toEqual([
    { path: 'name', given: 'nothing yet', allowed: 'text', remedy: 'Fill it in' },
    { path: 'width_mm', given: '7', allowed: 'Too big: expected number to be <=100 mm', remedy: 'Correct it' },
    {
      path: 'rows.1.stress_MPa',
      given: '30',
      allowed: 'Too big: expected number to be <=10 MPa',
      remedy: 'Correct it',
    },
  ]);
});
it('what is no figure stays as it was written', () =>
  expect(of({ name: 'x', width_mm: '4,5', rows: [{ stress_MPa: 1 }] })).toMatchObject([
    { path: 'width_mm', given: '"4,5"', allowed: 'a number with a decimal point', remedy: 'Write 4.5' },
  ]));
it('a comma that may stand for thousands is told in both senses', () =>
  expect(of({ name: 'x', width_mm: '1,250', rows: [{ stress_MPa: 1 }] })).toMatchObject([
    { given: '"1,250"', remedy: 'Write 1.250, or 1250' },
  ]));
it('a list that is too long is told in rows, and a wrong line of figures at its place with the unit', () => {
  const long = z.strictObject({ cycles_MPa: z.array(z.tuple([z.number().max(10), z.number()])).max(2) });
  expect(
    problemsOf(
      long,
      {
        cycles_ksi: [
          [1, 0],
          [1, 0],
          [1, 0],
        ],
      },
      '',
    ),
  ).toEqual([{ path: 'cycles_MPa', given: '3 rows', allowed: 'at most 2 rows', remedy: 'Give fewer' }]);
  expect(
    problemsOf(
      long,
      {
        cycles_ksi: [
          [1, 0],
          [20, 0],
        ],
      },
      '',
    ),
  ).toEqual([
    {
      path: 'cycles_MPa.1.0',
      given: '20',
      allowed: 'Too big: expected number to be <=10 MPa',
      remedy: 'Correct it',
    },
  ]);
});
it('also under the name of another unit, and is told once', () =>
  expect(of({ name: 'x', width_in: 'wide', rows: [{ stress_ksi: 1 }] })).toEqual([
    { path: 'width_mm', given: '"wide"', allowed: 'a number', remedy: 'Correct it' },
  ]));
it('one figure in two units is told of the whole', () =>
  expect(of({ name: 'x', width_mm: 4, width_in: 5, rows: [] })[0]).toMatchObject({
    path: '',
    remedy: 'Leave one of the two out',
  }));
it('anything may be given', () => {
  fc.assert(
    fc.property(fc.anything(), (x) => {
      expect(of(x).length).toBeGreaterThan(0);
    }),
  );
});
