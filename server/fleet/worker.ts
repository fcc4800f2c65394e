import { parentPort } from 'node:worker_threads';
import { isRefusal } from '../../engine/index.ts';
import { PROGRAM } from '../version.ts';
import { computeKept, type FleetTask } from './compute.ts';

parentPort?.postMessage({ ready: PROGRAM });
/** One aircraft after the other, beside the thread that answers requests. */
parentPort?.on('message', (task: FleetTask) => {
  try {
    parentPort?.postMessage({ kept: computeKept(task) });
  } catch (e) {
    if (isRefusal(e)) parentPort?.postMessage({ refusal: { code: e.code, detail: e.detail } });
    else parentPort?.postMessage({ fault: (e as Error).stack ?? String(e) });
  }
});
