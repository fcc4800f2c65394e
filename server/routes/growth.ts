import type { FastifyInstance } from 'fastify';
import { ROOMS } from '../basis/rooms.ts';
import type { Desk } from '../desk.ts';
import { basisRoutes } from './basis.ts';

/** How fast would a crack grow, how often must we look? */
export const growthRoutes = (api: FastifyInstance, desk: Desk): void => basisRoutes(api, desk, ROOMS.growth);
