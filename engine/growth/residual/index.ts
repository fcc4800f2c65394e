/** What the place still carries with a crack, and at which size that is no longer enough. */
export { correctedK } from './corrected-k.ts';
export { criticalAlong } from './critical-along.ts';
export { fracture, type Strength } from './fracture.ts';
export { netSectionYield } from './net-section.ts';
export { plasticZone } from './plastic-zone.ts';
export { longestAfterProof } from './proof.ts';
export { carried, residualAt, residualOf } from './residual-at.ts';
export { feddersen, LENGTHS_TRIED } from './tangent.ts';
