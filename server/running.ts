import type { FastifyInstance } from 'fastify';
import type { Desk } from './desk.ts';
import { PROGRAM } from './version.ts';

interface Running {
  readonly program: 'sparwright';
  readonly version: string;
  readonly data: string;
}

/** Says who listens here, for a second start on the same data. */
export function runningRoute(api: FastifyInstance, desk: Desk): void {
  api.get(
    '/program',
    async (): Promise<Running> => ({ program: 'sparwright', version: PROGRAM, data: desk.store.where }),
  );
}

/** True if this program already serves these data on that port. */
export async function servesAlready(address: string, data: string): Promise<boolean> {
  try {
    const r = await fetch(`${address}/api/program`, { signal: AbortSignal.timeout(2000) });
    const other = (await r.json()) as Partial<Running>;
    return other.program === 'sparwright' && other.data === data;
  } catch {
    return false;
  }
}
