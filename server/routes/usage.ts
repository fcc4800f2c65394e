import type { FastifyInstance } from 'fastify';
import { ROOMS } from '../basis/rooms.ts';
import type { Desk } from '../desk.ts';
import { basisRoutes } from './basis.ts';

/** How hard has it been flown? */
export const usageRoutes = (api: FastifyInstance, desk: Desk): void => basisRoutes(api, desk, ROOMS.usage);
