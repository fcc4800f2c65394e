import type { Block } from '../../../sheets/model.ts';

const ROOMS = [
  { anchor: 'record', text: 'Record' },
  { anchor: 'directive', text: 'Directive' },
  { anchor: 'outlook', text: 'Outlook' },
] as const;

/** Which room a block of the aircraft's sheet belongs to. */
function roomOf(block: Block): string | undefined {
  if (block.block === 'table')
    return block.rows.some((r) => Object.values(r.cells).some((c) => c.is === 'standing')) ? 'directive' : undefined;
  if (block.block !== 'picture') return undefined;
  if (/outlook|years|falls due|flying rate/i.test(`${block.title} ${block.scene.title}`)) return 'outlook';
  return /life|lived|time line|counted/i.test(`${block.title} ${block.scene.title}`) ? 'record' : undefined;
}

/** The first block of each room bears its anchor; only rooms that are on the page are named. */
export function idsOf(blocks: readonly Block[]) {
  const anchors = new Map<Block, string>();
  const taken = new Set<string>();
  for (const block of blocks) {
    const room = roomOf(block);
    if (!room || taken.has(room)) continue;
    taken.add(room);
    anchors.set(block, room);
  }
  return { anchors, rooms: ROOMS.filter((r) => taken.has(r.anchor)) };
}
