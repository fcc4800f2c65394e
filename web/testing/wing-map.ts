/** The invented wing and floor, for stories. */
export { floorExample } from '../../examples/scenario/floor.ts';
export { structureExample } from '../../examples/scenario/wing.ts';
