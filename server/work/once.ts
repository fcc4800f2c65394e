import { createHash } from 'node:crypto';
import { Refusal } from '../../engine/index.ts';
import { PROGRAM } from '../version.ts';
import type { Hands } from './hands.ts';
import type { KindName, PartOf } from './tasks.ts';

/** One thing that takes a while, done by the hands so that requests are answered meanwhile. @throws Refusal as it does */
export async function once<K extends KindName>(hands: Hands, task: K, document: unknown): Promise<PartOf<K>> {
  const text = new TextEncoder().encode(JSON.stringify(document));
  const input = new SharedArrayBuffer(text.byteLength);
  new Uint8Array(input).set(text);
  const hash = createHash('sha256').update(text).digest('hex');
  const made = await hands.compute({ task, version: PROGRAM, hash, input, seed: 0, from: 0, to: 1 });
  if ('refusal' in made) throw new Refusal(made.refusal.code, made.refusal.detail);
  return made.part as PartOf<K>;
}
