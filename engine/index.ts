/**
 * The engine in the order of the job. Pure computation: no clock, no network, no file, no screen.
 */
export * from './foundation/index.ts';
