import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type directive, usage } from '../../engine/index.ts';
import { usageExample } from '../../examples/index.ts';
import { flyingAt, mixToCome, readMix } from './mix.ts';

const document = usage.readUsage(usageExample);
const flown = (hours: Record<string, number>, from: directive.Mix['from'] = 'recent record'): directive.Mix => ({
  hours,
  landingsPerHour: { private: 1, tow: 9 },
  from,
});
const hardest = async () => 'tow';

it.each([
  ['as flown', 'as flown'],
  ['as_flown', 'as flown'],
  ['tow', [{ use: 'tow', share: 1 }]],
  [
    'private:0.7, tow:0.3',
    [
      { use: 'private', share: 0.7 },
      { use: 'tow', share: 0.3 },
    ],
  ],
])('reads %s', (text, mix) => expect(readMix(text)).toEqual(mix));
it.each([
  '',
  'tow:',
  'tow:1:1',
  'tow:x',
  'tow:-1',
  'tow:2',
  'Tow',
  'tow,',
  ':1',
  'tow:1e999',
  '<b>:1',
  'a'.repeat(300),
])('refuses "%s" in words', (text) => {
  try {
    readMix(text);
    expect.unreachable();
  } catch (e) {
    expect(e).toMatchObject({ code: 'foundation.document-invalid' });
  }
});
it('whatever is written is a mix or is refused', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      try {
        const mix = readMix(text);
        return mix === 'as flown' || mix.every((m) => m.share >= 0 && m.share <= 1);
      } catch (e) {
        return (e as { code?: string }).code === 'foundation.document-invalid';
      }
    }),
  );
});

it('as flown: the shares of the record', async () => {
  const { shares, from, notes } = await mixToCome('as flown', document, flown({ private: 0.75, tow: 0.25 }), hardest);
  expect(shares).toEqual([
    { use: 'private', share: 0.75 },
    { use: 'tow', share: 0.25 },
  ]);
  expect(from).toBe('as flown lately: 75 % private flying, 25 % glider towing');
  expect(notes).toEqual([]);
});
it('a use that the document does not know counts as the hardest one, and that is said', async () => {
  const { shares, notes } = await mixToCome(
    'as flown',
    document,
    flown({ private: 0.5, survey: 0.3, tow: 0.2 }),
    hardest,
  );
  expect(shares).toEqual([
    { use: 'private', share: 0.5 },
    { use: 'tow', share: 0.5 },
  ]);
  expect(notes).toEqual(['The usage document knows nothing of survey: counted as glider towing, its hardest use.']);
});
it.each([
  ['no aircraft', null, /No aircraft is named/],
  ['no use on record', flown({ private: 1 }, 'no record: private flying assumed'), /settles no use/],
  ['nothing flown', flown({ private: 0 }), /settles no use/],
])('%s: all in the hardest use, never in the mildest', async (_, mix, says) => {
  const { shares, notes } = await mixToCome('as flown', document, mix, hardest);
  expect(shares).toEqual([{ use: 'tow', share: 1 }]);
  expect(notes[0]).toMatch(says);
});
it('what is asked for is taken as it is', async () => {
  const asked = [
    { use: 'private', share: 0.4 },
    { use: 'tow', share: 0.6 },
  ];
  expect(await mixToCome(asked, document, flown({ private: 1 }), hardest)).toMatchObject({
    shares: asked,
    from: 'as asked: 40 % private flying, 60 % glider towing',
  });
});
it('directives count by the landings of the record, and by those of the document where it tells none', () => {
  const mix = flyingAt(
    [
      { use: 'tow', share: 0.5 },
      { use: 'instruction', share: 0.5 },
    ],
    { ...document, uses: document.uses.map((u) => ({ ...u, flight_h: 0.8, landings_per_flight: 4 })) },
    flown({ private: 1 }),
  );
  expect(mix.hours).toEqual({ tow: 0.5, instruction: 0.5 });
  expect(mix.landingsPerHour).toEqual({ tow: 9, instruction: 5 });
});
