import type { FastifyInstance } from 'fastify';
import { record } from '../../engine/index.ts';
import { callSheet } from '../../sheets/index.ts';
import { type Desk, gather } from '../desk.ts';
import { newEntries } from '../entries.ts';

/** A caller's six answers become entries known as statement, and a worst-side answer. */
export function callerRoutes(api: FastifyInstance, desk: Desk): void {
  api.post<{ Params: { shop: string } }>('/shops/:shop/call', async (request) => {
    const call = record.readCall(request.body);
    const { aircraft, entries, papersToAsk } = record.entriesFromCall(call);
    await desk.store.log.append(request.params.shop, newEntries(entries), 'the desk', new Date().toISOString());
    const { shop, model, ...g } = await gather(desk, request.params.shop, aircraft, { day: call.day });
    return { aircraft, sheet: callSheet({ ...g, record: model, shop, papersToAsk }) };
  });
}
