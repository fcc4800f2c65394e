import type { Day } from '../../engine/index.ts';
import { count, day as dayWords } from '../display.ts';
import { emptySheet, f, type ShopNamed, t } from '../frame.ts';
import type { Cell, FindingsBlock, Sheet } from '../model.ts';
import { type BasisListed, type BasisWord, NAMED } from './model.ts';

export interface BasisListInput {
  readonly word: BasisWord;
  readonly shop: ShopNamed & { readonly id: string };
  readonly day: Day;
  readonly rows: readonly BasisListed[];
  /** Aircraft of each model that no document was made for. */
  readonly without: readonly { readonly model: string; readonly aircraft: number }[];
}
const GIVES: Readonly<Record<BasisListed['gives'], string>> = {
  lives: 'lives and ratios',
  hours: 'hours',
  ratios: 'ratios only: no stress with a source',
  unread: 'nothing: it cannot be read',
};
const text = (words: string, small = ''): Cell => ({ is: 'text', text: words, ...(small ? { small } : {}) });

/** Every usage or growth document that a shop keeps, and the models that have none. */
export function basisListSheet(q: BasisListInput): Sheet {
  const named = NAMED[q.word];
  const many = count(q.rows.length, named);
  const lacking = q.without.reduce((n, w) => n + w.aircraft, 0);
  const { caution: _, ...bare } = emptySheet(
    q.word,
    q.word === 'usage' ? 'Usage' : 'Growth',
    q.day,
    q.shop.invented === true,
  );
  return {
    ...bare,
    titleBlock: {
      fields: [
        { label: 'Shop', value: q.shop.name },
        { label: 'On', value: dayWords(q.day) },
      ],
    },
    answer: q.rows.length
      ? [
          f(many),
          t(q.rows.length === 1 ? ' is kept' : ' are kept'),
          t(
            lacking
              ? `; ${count(lacking, 'aircraft', 'aircraft')} of the shop ${lacking === 1 ? 'has' : 'have'} none that fits.`
              : ', and every aircraft of the shop has one that fits.',
          ),
        ]
      : [t(`The shop keeps no ${named} yet.`)],
    because:
      q.word === 'usage'
        ? 'Each says how the uses of a type load one place of its wing.'
        : 'Each says how a crack at one place would grow, and how often to look.',
    blocks: [
      {
        block: 'table',
        title: `Kept ${named}s`,
        columns: [
          { key: 'title', title: 'Document', align: 'left' },
          { key: 'models', title: 'Made for', align: 'left' },
          { key: 'place', title: 'Place', align: 'left' },
          { key: 'speaks', title: q.word === 'usage' ? 'Uses' : 'Worked by', align: 'left' },
          { key: 'gives', title: 'Gives', align: 'left' },
          { key: 'kept', title: 'Kept', align: 'right' },
        ],
        rows: q.rows.map((r) => ({
          id: r.name,
          cells: {
            title: {
              is: 'link',
              text: r.title,
              href: ['', q.shop.id, q.word, r.name].map(encodeURIComponent).join('/'),
            },
            models: text(r.models.join(', ') || 'any model'),
            place: text(r.place),
            speaks: text(r.speaksOf),
            gives: text(GIVES[r.gives], r.invented ? 'invented' : ''),
            kept: text(dayWords(r.on), `${r.by}, entry ${r.entry}`),
          },
        })),
        empty: `None yet: enter the first ${named}.`,
      },
      findingsOf(q),
    ],
  };
}

function findingsOf(q: BasisListInput): FindingsBlock {
  const named = NAMED[q.word];
  return {
    block: 'findings',
    title: 'Findings',
    findings: [
      ...q.rows.flatMap((r) =>
        r.finding
          ? [
              {
                code: `${q.word}.kept-unread`,
                text: `${r.title}: ${r.finding}`,
                entries: [String(r.entry)],
                remedy: 'Open it, correct it and keep it again.',
              },
            ]
          : [],
      ),
      ...q.without.map((w) => ({
        code: `${q.word}.none-fits`,
        text: `No ${named} was made for ${w.model || 'aircraft without a model on record'}: ${count(w.aircraft, 'aircraft', 'aircraft')} of the shop ${w.aircraft === 1 ? 'goes' : 'go'} unanswered.`,
        entries: [],
        remedy: `Enter one for that type, or add the model to one that holds for it.`,
      })),
    ],
    empty: 'Every aircraft has one that fits, and all of them read.',
  };
}
