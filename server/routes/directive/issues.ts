import { type Day, directive, isRefusal, Refusal } from '../../../engine/index.ts';
import type { DraftShown, IssueShown } from '../../../sheets/index.ts';
import type { DirectiveRow, DraftRow, Store } from '../../../store/index.ts';
import { withdrawalOf } from '../../desk.ts';

export const notAdopted = (number: string, issue?: number | string): Refusal =>
  new Refusal('directive.not-adopted', {
    given: `directive "${number}"${issue === undefined ? '' : ` issue ${issue}`}`,
    allowed: 'a directive that this shop adopted',
    remedy: 'Adopt it first, or choose one from the list',
  });

const text = (x: unknown): string => (typeof x === 'string' ? x : '');
const recordOf = (x: unknown): Record<string, unknown> =>
  typeof x === 'object' && x !== null ? (x as Record<string, unknown>) : {};

/** Every adopted issue of a shop with its state on a day, and its document where this version reads it. */
export async function issuesOf(store: Store, shop: string, day: Day) {
  const withdrawn = await store.directives.withdrawn(shop);
  const rows = (await store.directives.list(shop)).map((row) => {
    const back = withdrawalOf(withdrawn, row.number, row.issue);
    const read = documentOf(row);
    return { row, back, document: read && back ? { ...read, withdrawnOn: back.on } : read };
  });
  const all = rows.flatMap((r) => r.document ?? []);
  return rows.map(({ row, back, document }) => {
    const shown: IssueShown = {
      number: row.number,
      issue: row.issue,
      title: text(recordOf(row.document).title),
      effective: document?.effective ?? null,
      adoptedOn: row.adoptedOn,
      adoptedBy: row.adoptedBy,
      state: document ? directive.stateOf(document, all, day) : null,
      withdrawn: back ? { on: back.on, by: back.by, because: back.because } : null,
    };
    return { row, document, shown };
  });
}
function documentOf(row: DirectiveRow): directive.DirectiveDocument | null {
  try {
    return directive.readDirective(row.document);
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return null;
  }
}

export function draftShown(d: DraftRow): DraftShown {
  const { title, issue } = recordOf(d.document);
  return { number: d.number, issue: typeof issue === 'number' ? issue : null, title: text(title), on: d.on, by: d.by };
}
