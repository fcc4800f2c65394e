import type { Span } from '../../../sheets/model.ts';
import type { Live } from './live.ts';

const many = (n: number, one: string, more: string) => `${n} ${n === 1 ? one : more}`;

/** Whether the document may be kept, and why not yet, in one sentence. */
export function stateOf(what: string, live: Pick<Live, 'checked' | 'refused' | 'computing' | 'sheet'>) {
  const t = (text: string): Span => ({ text });
  if (!live.checked)
    return { answer: [t(`${what} is being read.`)], ready: false, because: 'It has not been read yet.' };
  const missing = live.checked.problems.filter((p) => p.missing).length;
  const wrong = live.checked.problems.length - missing;
  const lacks = [
    ...(missing ? [many(missing, 'thing is still to do', 'things are still to do')] : []),
    ...(wrong ? [many(wrong, 'does not fit', 'do not fit')] : []),
  ].join(', ');
  if (lacks)
    return {
      answer: [t(`${what} is not whole yet: `), { text: lacks, figure: true }, t('.')],
      ready: false,
      because: `It is not whole yet: ${lacks}.`,
    };
  if (live.refused)
    return {
      answer: [t(`${what} reads, but it cannot be answered.`)],
      ready: false,
      because: 'It cannot be answered as it stands: see what is still to do.',
    };
  if (live.computing && !live.sheet)
    return { answer: [t(`${what} is whole; its answer is being computed.`)], ready: true, because: '' };
  return { answer: [t(`${what} is whole. Look its answer over, then keep it.`)], ready: true, because: '' };
}
