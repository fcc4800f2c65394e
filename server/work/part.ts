import { isRefusal, type RefusalCode, type RefusalDetail } from '../../engine/index.ts';
import { PROGRAM } from '../version.ts';
import { KINDS, type Kind, type KindName, type PartOf } from './tasks.ts';

/** One part of a long work, as it goes to a thread. */
export interface WorkTask<K extends KindName = KindName> {
  readonly task: K;
  /** Of the program that asks. */
  readonly version: string;
  /** SHA-256 of the input: the same input is read and prepared once in each thread. */
  readonly hash: string;
  /** The input as UTF-8 JSON, shared by all threads. */
  readonly input: SharedArrayBuffer;
  readonly seed: number;
  readonly from: number;
  readonly to: number;
}
export type WorkPart<K extends KindName = KindName> =
  | { readonly part: PartOf<K> }
  | { readonly refusal: { readonly code: RefusalCode; readonly detail: RefusalDetail } };

const MOST_PREPARED = 2;
const prepared = new Map<string, unknown>();

function preparedFor({ task, hash, input }: WorkTask): unknown {
  const key = `${task} ${hash}`;
  const known = prepared.get(key);
  if (known !== undefined) return known;
  const made = KINDS[task].prepare(JSON.parse(new TextDecoder().decode(new Uint8Array(input).slice())));
  if (prepared.size >= MOST_PREPARED) prepared.delete(prepared.keys().next().value!);
  prepared.set(key, made);
  return made;
}

/** Computes a part; a refusal comes back as data, since an error that crosses threads loses what it is. */
export function computePart(task: WorkTask): WorkPart {
  if (task.version !== PROGRAM)
    throw new Error(`asked by version ${task.version}, this is version ${PROGRAM}: start the program again`);
  try {
    const { part } = KINDS[task.task] as Kind<unknown, PartOf<KindName>>;
    return { part: part(preparedFor(task), task.from, task.to) };
  } catch (e) {
    if (isRefusal(e)) return { refusal: { code: e.code, detail: e.detail } };
    throw e;
  }
}
