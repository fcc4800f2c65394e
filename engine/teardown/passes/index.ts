/** How it goes together again: dry, apart, wet; and what must be passed before each stage. */

export { gatesFor, gatesOf, practiceFinding, withGates } from './gates.ts';
export { holesOf, nextSize } from './holes.ts';
export type { Opened } from './model.ts';
export { operation } from './operation.ts';
export { ASSUMED, TRADE } from './practice.ts';
export { practiceGates } from './practice-gates.ts';
export { type Reassembly, reassemble, reassembly } from './reassembly.ts';
