import { expect, it } from 'vitest';
import { pictureOf, readingOf, type Values } from './read.ts';

const values = (fields: Record<string, string>): Values => ({
  text: (n) => fields[n],
  number: (n) => (fields[n] === undefined ? undefined : Number(fields[n])),
  file: () => undefined,
});

it('a reading says in words what it lacks', () => {
  expect(() => readingOf(values({}))).toThrow(/Fill in the total in the book, the landings/);
  expect(() => readingOf(values({ shows_h: '5', meter: '🙂' }))).toThrow(/which meter/);
  expect(() => readingOf(values({ total_h: '5', meter: 'tachometer' }))).toThrow(/leave the meter empty/);
  expect(readingOf(values({ total_h: '5.5', shows_h: '4', meter: 'Engine running' }))).toEqual({
    total_h: 5.5,
    shows_h: 4,
    meter: 'engine_running',
  });
});
it('only a picture is a photograph', () => {
  expect(() => pictureOf(new File(['a'], 'a.csv', { type: 'text/csv' }))).toThrow(/"a.csv" is no picture/);
  expect(pictureOf(new File(['a'], 'a.png', { type: 'image/png' }))?.name).toBe('a.png');
  expect(pictureOf(undefined)).toBeUndefined();
});
