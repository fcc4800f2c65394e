import fc from 'fast-check';
import { expect, it } from 'vitest';
import { jsonText } from './json-text.ts';

it('is what JSON says, of any document', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (v) => {
      expect(jsonText(v)).toBe(JSON.stringify(v));
    }),
  );
  const at = { on: new Date(0) };
  expect(jsonText(at)).toBe(JSON.stringify(at));
  expect(jsonText({ a: undefined, b: [1, undefined], c: null })).toBe('{"b":[1,null],"c":null}');
});
it('a long list that is another one is read anew; the same one in another document is not', () => {
  const rows = Array.from({ length: 2000 }, (_, i) => [i, -i]);
  expect(jsonText({ title: 'a', deep: { rows } })).toBe(JSON.stringify({ title: 'a', deep: { rows } }));
  expect(jsonText({ title: 'b', rows })).toBe(JSON.stringify({ title: 'b', rows }));
  const changed = [...rows.slice(0, -1), [7, 7]];
  expect(jsonText({ rows: changed })).toBe(JSON.stringify({ rows: changed }));
});
