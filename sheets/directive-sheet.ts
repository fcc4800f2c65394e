import type { Day, directive } from '../engine/index.ts';
import { type DraftShown, diffTable, historyTable, type IssueShown, stateWords } from './directive-state.ts';
import { count, datesInWords, day as dayWords } from './display.ts';
import { emptySheet, f, type ShopNamed, t } from './frame.ts';
import type { Block, Cell, Sheet } from './model.ts';

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
  /** Within a shop: all issues of the number, a draft of the next, what this issue changes. */
  readonly history?: {
    readonly shop: string;
    readonly issues: readonly IssueShown[];
    readonly draft: DraftShown | null;
    readonly changes: { readonly was: string; readonly fields: readonly directive.FieldChange[] } | null;
  };
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
        { label: 'Effective', value: dayWords(d.effective), small: `issued ${dayWords(d.issued)}` },
        {
          label: 'Adopted',
          value: q.adopted ? dayWords(q.adopted.on) : 'not adopted',
          ...(q.adopted ? { small: q.adopted.by } : {}),
        },
        ...stateField(q),
      ],
    },
    answer: answerOf(q, failing.length),
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
      ...historyBlocks(q),
      {
        block: 'key-value',
        title: 'Where its text was read',
        pairs: [
          { key: 'Reference', cell: { is: 'text', text: d.reference } },
          { key: 'How well known', cell: { is: 'text', text: d.known } },
        ],
      },
    ],
    warnings: [...notInForce(q), ...(d.extract ? [`Only part of the official text was readable: ${d.extract}`] : [])],
    provenance: { known: d.known, evidence: 'copy', invented },
  };
}

/** What it asks, if it stands; what became of it, if not. */
function answerOf(q: DirectiveInput, failing: number): Sheet['answer'] {
  const { document: d, cases } = q;
  const own = ownIssue(q);
  if (own?.state && own.state.is !== 'in force' && own.state.is !== 'not yet effective')
    return [t(`${d.number} issue ${d.issue} is `), f(own.state.is), t(`: nothing rests on it on ${dayWords(q.day)}.`)];
  if (failing)
    return [
      t(`${d.number} is not computed: `),
      f(`${failing} of ${count(cases.length, 'case')}`),
      t(' of its own do not come out as written. Every part it affects stands as due.'),
    ];
  const when = own?.state?.is === 'not yet effective' ? 'will be in force from' : 'in force from';
  const come =
    cases.length === 1
      ? 'Its one test case comes out as written.'
      : `All ${count(cases.length, 'case')} come out as written.`;
  return [
    t(`${d.number} asks for `),
    f(count(d.actions.length, 'action')),
    t(`, ${when} ${dayWords(d.effective)}. `),
    t(cases.length ? come : 'It brings no test case.'),
  ];
}
const ownIssue = (q: DirectiveInput): IssueShown | undefined =>
  q.history?.issues.find((i) => i.issue === q.document.issue);

function stateField(q: DirectiveInput): Sheet['titleBlock']['fields'] {
  const own = ownIssue(q);
  if (!own) return [];
  const { word, small } = stateWords(own);
  return [{ label: `On ${dayWords(q.day)}`, value: word, ...(small ? { small } : {}) }];
}
/** A page of an issue that does not stand says so before all else. */
function notInForce(q: DirectiveInput): string[] {
  const own = ownIssue(q);
  if (!own || own.state?.is === 'in force') return [];
  const { word, small } = stateWords(own);
  return [`This issue is ${word}${small ? ` (${small})` : ''}: no standing rests on it on ${dayWords(q.day)}.`];
}
function historyBlocks(q: DirectiveInput): Block[] {
  if (!q.history) return [];
  const { shop, issues, draft, changes } = q.history;
  return [...(changes ? [diffTable(changes.was, changes.fields)] : []), historyTable(shop, issues, draft)];
}

export interface DirectiveListInput {
  readonly issues: readonly IssueShown[];
  readonly drafts: readonly DraftShown[];
  readonly shop: ShopNamed & { readonly id: string };
  readonly day: Day;
}
/** Every issue that the shop adopted with its state, and what is being written. */
export function directiveListSheet(q: DirectiveListInput): Sheet {
  const standing = q.issues.filter((i) => i.state?.is === 'in force').length;
  return {
    ...emptySheet('directive', 'Directives', q.day, q.shop.invented === true),
    titleBlock: {
      fields: [
        { label: 'Shop', value: q.shop.name },
        { label: 'On', value: dayWords(q.day) },
      ],
    },
    answer: q.issues.length
      ? [
          t('This shop has adopted '),
          f(count(q.issues.length, 'issue')),
          t(` of directives; ${count(standing, 'is', 'are')} in force on ${dayWords(q.day)}`),
          t(q.drafts.length ? `, and ${count(q.drafts.length, 'draft is', 'drafts are')} being written.` : '.'),
        ]
      : [t('This shop has adopted no directive yet.')],
    because:
      'Only adopted directives count. What the authority issued since the list was last checked does not stand here.',
    blocks: [adoptedTable(q), ...(q.drafts.length ? [draftsTable(q)] : [])],
    warnings: q.issues.flatMap((i) =>
      i.state
        ? []
        : [`${i.number} issue ${i.issue} cannot be read by this version: what it looks at is treated as due.`],
    ),
  };
}
const page = (shop: string, number: string, rest = ''): string =>
  `/${shop}/directive/${encodeURIComponent(number)}${rest}`;

function adoptedTable({ issues, shop }: DirectiveListInput): Block {
  const newestOf = new Map(
    issues.map((i) => [i.number, Math.max(...issues.filter((x) => x.number === i.number).map((x) => x.issue))]),
  );
  return {
    block: 'table',
    title: 'Adopted directives',
    columns: [
      { key: 'number', title: 'Directive', align: 'left' },
      { key: 'title', title: 'Title', align: 'left' },
      { key: 'state', title: 'State', align: 'left' },
      { key: 'effective', title: 'Effective', align: 'left' },
      { key: 'adopted', title: 'Adopted', align: 'left' },
      { key: 'next', title: 'Next issue', align: 'left' },
    ],
    rows: issues.map((i) => {
      const { word, small } = stateWords(i);
      const cells: Record<string, Cell> = {
        number: {
          is: 'link',
          text: `${i.number} issue ${i.issue}`,
          href: page(shop.id, i.number, `?issue=${i.issue}`),
        },
        title: { is: 'text', text: i.title },
        state: { is: 'text', text: word, ...(small ? { small } : {}) },
        effective: i.effective ? { is: 'day', day: i.effective, text: dayWords(i.effective) } : { is: 'nothing' },
        adopted: { is: 'day', day: i.adoptedOn, text: `${dayWords(i.adoptedOn)}, ${i.adoptedBy}` },
        next:
          newestOf.get(i.number) === i.issue
            ? { is: 'link', text: 'Write', href: page(shop.id, i.number, '/write') }
            : { is: 'nothing' },
      };
      return { id: `${i.number}:${i.issue}`, cells };
    }),
    empty: 'Write a directive with the form, or adopt a document: it is checked by its own test cases first.',
  };
}
function draftsTable({ drafts, shop }: DirectiveListInput): Block {
  return {
    block: 'table',
    title: 'Drafts: they count nowhere until adopted',
    columns: [
      { key: 'number', title: 'Draft', align: 'left' },
      { key: 'title', title: 'Title', align: 'left' },
      { key: 'kept', title: 'Kept', align: 'left' },
    ],
    rows: drafts.map((d) => ({
      id: d.number,
      cells: {
        number: {
          is: 'link',
          text: d.issue === null ? d.number : `${d.number} issue ${d.issue}`,
          href: page(shop.id, d.number, '/write'),
        },
        title: { is: 'text', text: d.title },
        kept: { is: 'day', day: d.on, text: `${dayWords(d.on)}, ${d.by}` },
      },
    })),
    empty: 'Nothing is being written.',
  };
}
