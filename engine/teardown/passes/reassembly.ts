import type { TeardownDocument } from '../document.ts';
import type { MapFinding, Operation } from '../model.ts';
import { apartAgain } from './apart.ts';
import { togetherOf } from './backwards.ts';
import { allMet, type State } from './closing-looks.ts';
import { wingOf } from './context.ts';
import { dryPass } from './dry.ts';
import { findingsOf } from './findings.ts';
import type { LineUp } from './line-up.ts';
import type { Opened } from './model.ts';
import { idOf } from './operation.ts';
import { piecesOf } from './pieces.ts';
import { wetPass } from './wet.ts';

export interface Reassembly {
  readonly operations: readonly Operation[];
  readonly findings: readonly MapFinding[];
}

/**
 * How what a teardown opens goes together again.
 *
 * What: where holes are drilled, in two passes. Dry: parts up, clipped, into the jig, measured, edge distances, drilled.
 * Apart: clips out, off, deburred, coated, dried. Wet: sealant, in, clipped, measured, riveted, closing rows last, cured.
 * Where nothing is drilled, in one. A row is drilled if it goes through a new part or has holes for the next size.
 * How: the order is found backwards from the finished wing, so that what must still be off or open when something goes
 * in is so, and the way back that the maker states is kept; what comes off last goes in first.
 * Not valid for: parts that are not held by a row of the map.
 * @param document as read; recorded holes and edge distances are taken from it
 * @param opened ids, in the order in which they came off
 * @returns operations in a valid order; `after` names also the operations of the teardown (`off:`, `open:`, `look:`)
 * @see AC 43.13-1B paragraphs 4-57b and 4-57c(1); common practice of the trade, from memory
 */
export function reassemble(document: TeardownDocument, opened: Opened): Reassembly {
  const wing = wingOf(document, opened);
  const { pieces, unmet } = piecesOf(wing);
  const sequence = togetherOf(pieces);
  const line: LineUp = { wing, sequence, operations: [], findings: [], jig: null, untimed: new Map() };
  if (wing.twice) wetPass(line, [apartAgain(line, dryPass(line))]);
  else wetPass(line, []);
  const hidden = waitForLooks(line.operations, document, opened);
  const done = new Set(document.recorded.flatMap((r) => (r.what === 'done' ? [r.operation] : [])));
  const operations = hidden.map((o) => ({ ...o, after: [...new Set(o.after)], done: done.has(o.id) }));
  return { operations, findings: [...findingsOf(line, unmet), ...line.findings] };
}
export const reassembly = (document: TeardownDocument, opened: Opened): readonly Operation[] =>
  reassemble(document, opened).operations;

/** What would hide a look or a small job of the plan waits for it. */
function waitForLooks(operations: readonly Operation[], document: TeardownDocument, opened: Opened): Operation[] {
  const state: State = { off: new Set(opened.off), open: new Set(opened.open) };
  const { looks, jobs } = document.map;
  let left = [
    ...looks.filter((l) => opened.looks?.includes(l.id)).map((l) => ({ id: idOf('look', l.id), needs: l.needs })),
    ...jobs.filter((j) => opened.jobs?.includes(j.id)).map((j) => ({ id: idOf('job', j.id), needs: j.needs })),
  ].filter((l) => allMet(state, l.needs));
  return operations.map((o) => {
    if (o.kind === 'put') state.off.delete(o.of);
    else if (o.kind === 'clip' || o.kind === 'close') state.open.delete(o.of);
    else return o;
    const hidden = left.filter((l) => !allMet(state, l.needs));
    left = left.filter((l) => !hidden.includes(l));
    return hidden.length > 0 ? { ...o, after: [...o.after, ...hidden.map((l) => l.id)] } : o;
  });
}
