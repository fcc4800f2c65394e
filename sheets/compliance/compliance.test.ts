import { describe, expect, it } from 'vitest';
import { type Day, directive, record } from '../../engine/index.ts';
import { say } from '../frame.ts';
import { WORST_FIRST } from '../standing.ts';
import { aircraftInput, assessment, MODEL, outlookIn, TODAY } from '../testing/case.ts';
import { complianceSheet } from './sheet.ts';

const RULE: directive.DirectiveDocument = {
  sparwright: 'directive/1',
  number: 'W-14',
  issue: 2,
  title: 'Caps',
  authority: 'Board',
  rank: 'directive',
  issued: '2024-03-03' as Day,
  effective: '2024-04-03' as Day,
  reference: 'made up',
  known: 'invented',
  affects: {},
  actions: [assessment('spar:left', 'due').action],
  cases: [],
};
const look = (subject: string, body: object = {}) => ({
  id: 'look',
  subject,
  kind: 'accomplished',
  day: '2026-03-01',
  order: 0,
  evidence: 'seen',
  paper: { title: 'Book 3', page: '40', row: 2 },
  body: {
    directive: 'W-14',
    issue: 2,
    action: 'first_look',
    finding: 'none',
    method: 'eddy current',
    total_h: 5300,
    landings: 5100,
    signer: { name: 'M. Orne', certificate: 'ZQ-M-114' },
    ...body,
  },
});
const recordWith = (...more: object[]) =>
  record.modelOf({ day: TODAY, invented: true, entries: [...MODEL.entries, ...more] as record.Entry[] });
const repeating = (id: string) => {
  const a = assessment(id, 'done and repeating', 'done and repeating', 900);
  const dueAt = { ...a.treatAs.dueAt, landings: 6018, day: '2031-03-01' as Day };
  return { ...a, affected: { yes: true, because: 'model W4' }, treatAs: { ...a.treatAs, dueAt } };
};
const sheet = (all: readonly directive.Assessment[], more: object[] = [], over: object = {}) =>
  complianceSheet({
    ...aircraftInput(all, new Map(all.map((a) => [`${a.subject}|W-14|first_look`, outlookIn(900)]))),
    record: recordWith(...more),
    documents: [RULE],
    known: 42,
    ...over,
  });
const rows = (s: ReturnType<typeof sheet>, title = 'In force') =>
  s.blocks.flatMap((b) => (b.block === 'table' && b.title.startsWith(title) ? b.rows : []));
const cell = (row: ReturnType<typeof rows>[number], key: string): string => {
  const c = row.cells[key];
  return c && 'text' in c
    ? [c.text, 'small' in c ? c.small : ''].filter(Boolean).join('; ').replaceAll('\u202f', ' ')
    : '';
};

/**
 * 14 CFR 91.417(a)(2)(v), as quoted by two independent public pages: the current status of applicable directives
 * including, for each, the method of compliance, the number and the revision date; where action recurs, the time and
 * the date when the next action is required. Date, signature and certificate number: 91.417(a)(1)(ii) and (iii).
 * One item, one column, and what stands in it.
 */
describe('what 14 CFR 91.417 has an owner keep, item by item', () => {
  const [row] = rows(sheet([repeating('spar:left')], [look('spar:left')], { as: 'file' }));
  it.each([
    ['current status', 'standing', 'done and repeating'],
    ['applicable, or not', 'affected', 'affected: model W4'],
    ['method of compliance', 'method', 'eddy current'],
    ['directive number', 'number', 'W-14'],
    ['its issue', 'issue', '2'],
    ['revision date', 'issued', '3 Mar 2024'],
    ['time when the next action is required', 'next', '6 018 landings'],
    ['date when the next action is required', 'date', '1 Mar 2031'],
    ['(a)(1)(ii) date of completion', 'done', '1 Mar 2026'],
    ['(a)(1)(iii) signature and certificate number', 'signer', 'M. Orne; ZQ-M-114'],
    ['reading at accomplishment, hours', 'hours', '5 300.0'],
    ['reading at accomplishment, landings', 'landings', '5 100'],
    ['side', 'side', 'left'],
  ])('%s', (_, key, words) => expect(cell(row!, key)).toBe(words));
  it('every one of them is a column of the file, and every one is on the page', () => {
    const columns = (as: 'file' | 'page') =>
      sheet([repeating('spar:left')], [look('spar:left')], { as }).blocks.flatMap((b) =>
        b.block === 'table' && b.title === 'In force' ? b.columns.map((c) => c.key) : [],
      );
    for (const key of [
      'side',
      'number',
      'issue',
      'issued',
      'affected',
      'standing',
      'method',
      'done',
      'signer',
      'next',
      'date',
    ])
      expect(columns('file')).toContain(key);
    const [shown] = rows(sheet([repeating('spar:left')], [look('spar:left')]));
    const page = columns('page')
      .map((k) => cell(shown!, k))
      .join(' | ');
    for (const words of [
      'Left inboard spar',
      'W-14 issue 2',
      'of 3 Mar 2024',
      'eddy current',
      'nothing found',
      '1 Mar 2026',
      'Book 3, page 40, line 2',
      '5 300.0 h, 5 100 landings; as written',
      'M. Orne; ZQ-M-114',
      '6 018 landings',
      '1 Mar 2031',
    ])
      expect(page).toContain(words);
  });
});

describe('what is not there is said', () => {
  it('work that the standing asks for and no paper shows is not on record; where nothing is asked yet, none yet', () => {
    const of = (standing: directive.Standing) => cell(rows(sheet([assessment('spar:left', standing)]))[0]!, 'method');
    expect(['overdue', 'due', 'soon due'].map((s) => of(s as directive.Standing))).toEqual(
      Array(3).fill('not on record'),
    );
    expect(of('not yet due')).toBe('none yet');
  });
  it('no signer, no certificate, no method, no paper', () => {
    const bare = { ...look('spar:left', { method: undefined, signer: undefined }), paper: undefined };
    const [row] = rows(sheet([repeating('spar:left')], [bare]));
    expect([cell(row!, 'method'), cell(row!, 'signer'), cell(row!, 'done')]).toEqual([
      'no method on record; nothing found',
      'no signer on record',
      '1 Mar 2026; no paper named',
    ]);
    const named = look('spar:left', { signer: { name: 'M. Orne' } });
    expect(cell(rows(sheet([repeating('spar:left')], [named]))[0]!, 'signer')).toContain(
      'no certificate number on record',
    );
  });
  it('not affected with the reason', () => {
    const a = {
      ...assessment('spar:left', 'not affected'),
      affected: { yes: false, because: 'model W2 is not named' },
    };
    expect(cell(rows(sheet([a]))[0]!, 'standing')).toBe('not affected; model W2 is not named');
    expect(cell(rows(sheet([a], [], { as: 'file' }))[0]!, 'affected')).toBe('not affected: model W2 is not named');
  });
  it('an older issue stays below with what was done under it', () => {
    const old = { ...RULE, issue: 1, issued: '2019-02-11' as Day, effective: '2019-03-11' as Day };
    const s = sheet([repeating('spar:left')], [look('spar:left', { issue: 1 })], { documents: [old, RULE] });
    const [past] = rows(s, 'No longer');
    expect(['directive', 'state', 'part', 'method', 'done'].map((k) => cell(past!, k))).toEqual([
      'W-14 issue 1; of 11 Feb 2019',
      'superseded',
      'Left inboard spar',
      'eddy current; nothing found',
      '1 Mar 2026',
    ]);
    expect(cell(rows(s)[0]!, 'method')).toBe('none yet');
  });
  it('conditions of an alternative stand with it', () => {
    const alternative = { reference: 'AM-1', conditions: 'Straps stay.', entry: '1', expires: '2027-01-01' as Day };
    const [row] = rows(sheet([{ ...assessment('spar:left', 'not yet due'), alternative }]));
    expect(cell(row!, 'method')).toBe('none yet; alternative AM-1 until 1 Jan 2027: Straps stay');
    expect(cell(row!, 'next')).toContain('; ferry not stated');
  });
});

describe('the sheet', () => {
  it('opens with how much asks for an act, and the worst first', () => {
    const two = [assessment('spar:right', 'not yet due'), assessment('spar:left', 'overdue', 'not yet due', -5)];
    expect(say(sheet(two).answer)).toBe(
      '2 actions are open on ZQ-AAA; 1 asks for an act, first the left inboard spar under W-14: treat as overdue.',
    );
    expect(say(sheet([assessment('spar:left', 'not yet due')]).answer)).toContain('none is soon due, due or overdue');
    expect(say(sheet([]).answer)).toContain('Nothing is open');
  });
  it('shows no row softer than treat as, and keeps the worse above the better', () => {
    const all = directive.STANDINGS.map((s, i) => ({
      ...assessment(i % 2 ? 'spar:left' : 'spar:right', s),
      subject: i % 2 ? 'spar:left' : 'spar:right',
    }));
    const shown = rows(sheet(all)).map((r) => r.cells.standing);
    const ranks = shown.flatMap((c) =>
      c?.is === 'standing' ? [WORST_FIRST.indexOf(c.worst as directive.Standing)] : [],
    );
    expect(ranks).toHaveLength(directive.STANDINGS.length);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });
  it('only paper has a place to sign', () => {
    const signs = (as: string) => JSON.stringify(sheet([], [], { as }).blocks).includes('Signature');
    expect(['page', 'file', 'paper'].map(signs)).toEqual([false, false, true]);
  });
});
