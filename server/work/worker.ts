import { PROGRAM } from '../version.ts';
import { computePart, type WorkPart, type WorkTask } from './part.ts';

/** What a thread of long work runs: first it says which version it is, then it computes one part after the other. */
export default function work(asked: WorkTask | 'which version?'): WorkPart | string {
  return asked === 'which version?' ? PROGRAM : computePart(asked);
}
