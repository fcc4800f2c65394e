import { type Day, directive, type record } from '../../engine/index.ts';
import { findingsBlock } from '../aircraft-sheet.ts';
import { permitLines } from '../approval-words.ts';
import { count, day as dayWords } from '../display.ts';
import { aircraftBlock, caution, evidenceOf, f, type ShopNamed, t } from '../frame.ts';
import { listChecked } from '../list-checked.ts';
import type { Block, Sheet, Span } from '../model.ts';
import {
  type Assessment,
  handed,
  isOpen,
  needsAct,
  type Outlooks,
  partInSentence,
  partName,
  shownOutlooks,
  shownWorst,
  unsettled,
  worstFirst,
} from '../standing.ts';
import { approvalsTable, inForceTable, pastTable } from './tables.ts';

export interface ComplianceInput {
  readonly thing: record.Thing;
  readonly parts: readonly record.Thing[];
  readonly lives: ReadonlyMap<string, record.Life>;
  readonly documents: readonly directive.DirectiveDocument[];
  readonly assessments: readonly Assessment[];
  readonly outlooks: Outlooks;
  readonly day: Day;
  readonly record: record.RecordModel;
  readonly shop: ShopNamed;
  /** Entries up to this number are in it. */
  readonly known: number;
  /** Screen, paper with a place to sign, or a file with one thing per column. */
  readonly as?: 'page' | 'paper' | 'file';
}

/**
 * The state of every directive issue on one aircraft, part by part and side by side: what 14 CFR 91.417(a)(2)(v) has
 * an owner keep, and who signed. What is wanted and not on record says so.
 */
export function complianceSheet(q: ComplianceInput): Sheet {
  const things = new Map([q.thing, ...q.parts].map((x) => [x.id, x]));
  const name = partName(q.thing);
  const outlooks = shownOutlooks(q.assessments, q.outlooks);
  const ordered = worstFirst(handed(q.assessments, things), outlooks);
  const parts = q.parts.map((p) => p.id);
  const found = directive.complianceOf({ documents: q.documents, model: q.record, assessments: ordered, day: q.day }, [
    q.thing.id,
    ...parts,
  ]);
  const checked = listChecked(q.record, q.thing.id, q.day);
  const invented = q.record.invented || q.shop.invented === true;
  const block = aircraftBlock(q.thing, q.lives.get(q.thing.id), q.parts, q.day);
  const filed = q.as === 'file';
  const blocks: Block[] = [
    inForceTable(found.lines, { things, outlooks, day: q.day, filed }),
    pastTable(found.past, q.record.things),
    approvalsTable(q.record, q.thing.id, parts, q.day),
    findingsBlock([...found.findings, ...q.record.findings.filter((x) => x.code.startsWith('directive.'))]),
    ...(q.as === 'paper' ? [SIGNED] : []),
  ];
  return {
    word: 'compliance',
    title: `Compliance list, ${name}`,
    titleBlock: {
      fields: [
        ...block.fields.slice(0, 3),
        checked.on
          ? { label: 'List last checked', value: dayWords(checked.on), small: `${checked.authority}, by ${checked.by}` }
          : { label: 'List last checked', value: 'not recorded' },
        ...(q.as === 'paper' || filed ? [{ label: 'Known to', value: `entry ${q.known}`, small: q.shop.name }] : []),
      ],
    },
    subject: name,
    day: q.day,
    answer: answer(q, ordered, things, name),
    because: checked.late ? '' : checked.words,
    blocks,
    working: [],
    warnings: [
      ...(checked.late ? [checked.words] : []),
      ...(q.lives.get(q.thing.id)?.stale ? ['The last reading is old: every figure is as of that reading.'] : []),
      ...permitLines(q.record, q.thing.id, q.day),
    ],
    caution: caution(invented),
    provenance: {
      known: invented ? 'invented' : 'read',
      evidence: evidenceOf(q.parts.length ? q.parts : [q.thing]),
      invented,
    },
    number: `entry ${q.known}`,
  };
}

const LINE = '.'.repeat(42);
const SIGNED: Block = {
  block: 'key-value',
  title: 'Read and signed',
  pairs: ['Name', 'Certificate', 'Signature', 'Day'].map((key) => ({ key, cell: { is: 'text', text: LINE } })),
};

/** How much is in force, and what of it asks for an act, worst first. */
function answer(
  q: ComplianceInput,
  all: readonly Assessment[],
  things: ReadonlyMap<string, record.Thing>,
  name: string,
): Span[] {
  const open = all.filter(isOpen);
  const act = all.filter(needsAct);
  const absent = q.record.findings.filter(
    (x) => x.code === 'directive.part-not-on-record' || x.code === 'directive.does-not-read',
  );
  const lacking: Span[] = absent.length
    ? [t(' Not computed, treat as '), f('due'), t(`: ${absent.map((x) => x.text).join(' ')}`)]
    : [];
  if (!open.length) return [t(`Nothing is open on ${name} under the directives that this shop adopted.`), ...lacking];
  const lines = `${count(open.length, 'action is', 'actions are')} open on ${name}`;
  const [first] = act;
  if (!first) return [t(`${lines}; `), f('none is soon due, due or overdue'), t('.'), ...lacking];
  const worst = shownWorst(first);
  return [
    t(`${lines}; `),
    f(`${count(act.length, 'asks', 'ask')} for an act`),
    t(`, first ${partInSentence(things.get(first.subject), first.subject)} under ${first.directive}: `),
    f(`${unsettled(first) && !first.notComputed ? 'treat as ' : ''}${worst}`),
    t('.'),
    ...lacking,
  ];
}
