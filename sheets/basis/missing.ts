import type { Day, record } from '../../engine/index.ts';
import { count } from '../display.ts';
import { aircraftBlock, emptySheet, f, type ShopNamed, t } from '../frame.ts';
import type { Sheet, Span } from '../model.ts';
import { type BasisNamed, type BasisWord, NAMED } from './model.ts';

export interface MissingInput {
  readonly word: BasisWord;
  readonly shop: ShopNamed & { readonly id: string };
  readonly thing: record.Thing;
  readonly life: record.Life | undefined;
  readonly parts: readonly record.Thing[];
  readonly day: Day;
  readonly because: 'none kept' | 'none fits' | 'made for others' | 'unread';
  /** What this version cannot read in it. */
  readonly unread: string;
  readonly kept: readonly BasisNamed[];
}
const LOADS: Readonly<Record<BasisWord, readonly string[]>> = {
  usage: [
    'how each use loads the wing: gusts, manoeuvres, taxying and landings, each table with its source',
    'the stress per g at a named place, with its source; without it uses are compared and no life is given',
    'the S-N curve and the scatter factor',
  ],
  growth: [
    'where the crack sits: plate, hole, edge distance, thickness',
    'what works it: a usage document that the shop keeps, or cycles of its own',
    'the material, the first flaw, the size that a look finds, and the rule that makes an interval of it',
  ],
};

/** No document answers for this aircraft: what is missing, and where to enter it. Nothing is computed and nothing is said of its wing. */
export function basisMissingSheet(q: MissingInput): Sheet {
  const named = NAMED[q.word];
  const registration = q.thing.attributes.registration?.value ?? q.thing.id;
  const model = q.thing.attributes.model?.value;
  const href = (...path: string[]) => ['', q.shop.id, q.word, ...path].map(encodeURIComponent).join('/');
  const answer: Record<MissingInput['because'], Span[]> = {
    'none kept': [t(`For ${registration} nothing can be said: `), f(`the shop keeps no ${named}`), t('.')],
    'none fits': [
      t(`For ${registration} nothing can be said: `),
      f(`no ${named} was made for ${model ? `the model ${model}` : 'an aircraft without a model on record'}`),
      t('.'),
    ],
    'made for others': [
      t(`For ${registration} nothing can be said with that: `),
      f(`the ${named} asked for was made for other models`),
      t('.'),
    ],
    unread: [
      t(`For ${registration} nothing can be said: `),
      f(`its ${named} cannot be answered as it is kept`),
      t('.'),
    ],
  };
  const made = [...new Set(q.kept.flatMap((k) => k.models))].sort();
  const { caution: _, ...bare } = emptySheet(q.word, title(q.word), q.day, q.shop.invented === true);
  return {
    ...bare,
    subject: registration,
    titleBlock: aircraftBlock(q.thing, q.life, q.parts, q.day),
    answer: answer[q.because],
    because: q.unread
      ? `What is wrong with it: ${q.unread}.`
      : q.kept.length
        ? `The shop keeps ${count(q.kept.length, named)}${made.length ? `, made for ${made.join(', ')}` : ''}.`
        : 'Nothing is computed, and nothing is said of its wing.',
    blocks: [
      {
        block: 'prose',
        title: 'What is missing',
        paragraphs: [
          `A ${named} for the type, entered once for the shop, serves every aircraft of the models it names. It says:`,
        ],
        list: LOADS[q.word],
      },
      {
        block: 'table',
        title: 'Where to enter it',
        columns: [{ key: 'where', title: 'Page', align: 'left' }],
        rows: [
          { id: 'new', cells: { where: { is: 'link', text: `Enter a ${named}`, href: href('new') } } },
          { id: 'list', cells: { where: { is: 'link', text: `All ${named}s of the shop`, href: href() } } },
        ],
        empty: '',
      },
      {
        block: 'table',
        title: 'Kept by the shop',
        columns: [
          { key: 'title', title: 'Document', align: 'left' },
          { key: 'models', title: 'Made for', align: 'left' },
        ],
        rows: q.kept.map((k) => ({
          id: k.name,
          cells: {
            title: { is: 'link', text: k.title, href: href(k.name) },
            models: { is: 'text', text: k.models.join(', ') || 'any model' },
          },
        })),
        empty: 'None yet.',
      },
    ],
  };
}
const title = (word: BasisWord): string =>
  word === 'usage' ? 'How hard has it been flown?' : 'How fast would a crack grow?';
