import { type Day, directive } from '../engine/index.ts';
import { count, datesInWords, day as dayWords } from './display.ts';
import { emptySheet, f, type ShopNamed, t } from './frame.ts';
import type { Sheet } from './model.ts';

export interface CaseShown {
  readonly name: string;
  readonly passes: boolean;
  readonly because?: string | undefined;
}
export interface DirectiveInput {
  readonly document: directive.DirectiveDocument;
  readonly readBack: readonly directive.ReadBack[];
  readonly cases: readonly CaseShown[];
  readonly adopted?: { readonly by: string; readonly on: Day } | null;
  readonly day: Day;
  readonly invented?: boolean;
}
export function directiveSheet(q: DirectiveInput): Sheet {
  const d = q.document;
  const failing = q.cases.filter((c) => !c.passes);
  const invented = q.invented === true || d.known === 'invented';
  return {
    ...emptySheet('directive', `${d.number} issue ${d.issue}`, q.day, invented),
    titleBlock: {
      fields: [
        { label: 'Directive', value: `${d.number} issue ${d.issue}`, small: d.title },
        { label: 'Authority', value: d.authority, small: d.rank },
        { label: 'In force from', value: dayWords(d.effective), small: `issued ${dayWords(d.issued)}` },
        {
          label: 'Adopted',
          value: q.adopted ? dayWords(q.adopted.on) : 'not adopted',
          ...(q.adopted ? { small: q.adopted.by } : {}),
        },
      ],
    },
    answer: failing.length
      ? [
          t(`${d.number} is not computed: `),
          f(`${failing.length} of ${count(q.cases.length, 'case')}`),
          t(' of its own do not come out as written. Every part it affects stands as due.'),
        ]
      : [
          t(`${d.number} asks for `),
          f(count(d.actions.length, 'action')),
          t(`, in force from ${dayWords(d.effective)}. `),
          t(
            q.cases.length
              ? q.cases.length === 1
                ? 'Its one test case comes out as written.'
                : `All ${count(q.cases.length, 'case')} come out as written.`
              : 'It brings no test case.',
          ),
        ],
    because: d.unsafe_condition ?? d.title,
    blocks: [
      ...q.readBack.map((r) => ({
        block: 'prose' as const,
        title: r.heading,
        paragraphs: [],
        list: r.sentences.map(datesInWords),
      })),
      {
        block: 'table',
        title: 'Its own test cases',
        columns: [
          { key: 'name', title: 'Case', align: 'left' },
          { key: 'result', title: 'Result', align: 'left' },
        ],
        rows: q.cases.map((c, i) => ({
          id: String(i),
          cells: {
            name: { is: 'text', text: c.name },
            result: {
              is: 'text',
              text: c.passes ? 'as written' : 'not as written',
              ...(c.because ? { small: c.because } : {}),
            },
          },
        })),
        empty: 'It brings no test case.',
      },
      {
        block: 'key-value',
        title: 'Where its text was read',
        pairs: [
          { key: 'Reference', cell: { is: 'text', text: d.reference } },
          { key: 'How well known', cell: { is: 'text', text: d.known } },
        ],
      },
    ],
    warnings: d.extract ? [`Only part of the official text was readable: ${d.extract}`] : [],
    provenance: { known: d.known, evidence: 'copy', invented },
  };
}

export interface DirectiveListInput {
  readonly rows: readonly {
    readonly number: string;
    readonly issue: number;
    readonly adoptedOn: Day;
    readonly adoptedBy: string;
    readonly document: unknown;
  }[];
  readonly shop: ShopNamed & { readonly id: string };
  readonly day: Day;
}
export function directiveListSheet(q: DirectiveListInput): Sheet {
  const rows = q.rows.map((r) => ({ ...r, document: directive.zDirectiveDocument.parse(r.document) }));
  return {
    ...emptySheet('directive', 'Directives', q.day, q.shop.invented === true),
    titleBlock: {
      fields: [
        { label: 'Shop', value: q.shop.name },
        { label: 'On', value: dayWords(q.day) },
      ],
    },
    answer: rows.length
      ? [t('This shop has adopted '), f(count(rows.length, 'directive')), t('.')]
      : [t('This shop has adopted no directive yet.')],
    because:
      'Only adopted directives count. What the authority issued since the list was last checked does not stand here.',
    blocks: [
      {
        block: 'table',
        title: 'Adopted directives',
        columns: [
          { key: 'number', title: 'Directive', align: 'left' },
          { key: 'title', title: 'Title', align: 'left' },
          { key: 'effective', title: 'In force from', align: 'left' },
          { key: 'adopted', title: 'Adopted', align: 'left' },
        ],
        rows: rows.map((r) => ({
          id: `${r.number}:${r.issue}`,
          cells: {
            number: {
              is: 'link',
              text: `${r.number} issue ${r.issue}`,
              href: `/${q.shop.id}/directive/${encodeURIComponent(r.number)}`,
            },
            title: { is: 'text', text: r.document.title, small: `${r.document.authority}, ${r.document.rank}` },
            effective: { is: 'day', day: r.document.effective, text: dayWords(r.document.effective) },
            adopted: { is: 'day', day: r.adoptedOn, text: `${dayWords(r.adoptedOn)}, ${r.adoptedBy}` },
          },
        })),
        empty: 'Adopt a directive below: its document is checked by its own test cases first.',
      },
    ],
  };
}
