import { inflateRawSync } from 'node:zlib';
import { Refusal } from '../engine/index.ts';
import { LIMITS } from './model.ts';

const END = 0x06054b50;
const ENTRY = 0x02014b50;

const broken = (what: string): Refusal =>
  new Refusal('intake.broken', {
    given: `A spreadsheet package that cannot be read: ${what}`,
    allowed: 'a whole .xlsx file',
    remedy: 'Open it in the spreadsheet program, save it again as .xlsx or CSV, and send that',
  });
const bomb = (): Refusal =>
  new Refusal('intake.unpacks-too-large', {
    given: `A spreadsheet that unpacks to more than ${LIMITS.unpacked_bytes / 1024 / 1024} MB`,
    allowed: `up to ${LIMITS.unpacked_bytes / 1024 / 1024} MB unpacked`,
    remedy: 'Save only the sheet with the log as .xlsx or CSV and send that',
  });

/**
 * Names in a zip package, after its sizes were held against the limit: first as its directory states them,
 * then as its parts really unpack, so that a directory that lies is caught too.
 *
 * @throws Refusal `intake.broken`, `intake.unpacks-too-large`
 */
export function namesInZip(bytes: Uint8Array): string[] {
  const b = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = b.length - 22;
  while (end >= 0 && end >= b.length - 65_557 && b.readUInt32LE(end) !== END) end--;
  if (end < 0 || b.readUInt32LE(end) !== END) throw broken('its directory is missing');
  const parts: { name: string; method: number; packed: number; size: number; at: number }[] = [];
  let at = b.readUInt32LE(end + 16);
  const count = b.readUInt16LE(end + 10);
  if (count === 0xffff || at === 0xffffffff) throw bomb();
  let total = 0;
  for (let n = 0; n < count; n++) {
    if (at + 46 > b.length || b.readUInt32LE(at) !== ENTRY) throw broken('its directory is damaged');
    const nameLength = b.readUInt16LE(at + 28);
    const size = b.readUInt32LE(at + 24);
    parts.push({
      name: b.toString('utf8', at + 46, at + 46 + nameLength),
      method: b.readUInt16LE(at + 10),
      packed: b.readUInt32LE(at + 20),
      size,
      at: b.readUInt32LE(at + 42),
    });
    total += size;
    if (total > LIMITS.unpacked_bytes) throw bomb();
    at += 46 + nameLength + b.readUInt16LE(at + 30) + b.readUInt16LE(at + 32);
  }
  for (const part of parts) holdToItsSize(b, part);
  return parts.map((p) => p.name);
}

function holdToItsSize(b: Buffer, part: { method: number; packed: number; size: number; at: number }): void {
  if (part.method !== 8) return;
  if (part.at + 30 > b.length) throw broken('a part of it is missing');
  const start = part.at + 30 + b.readUInt16LE(part.at + 26) + b.readUInt16LE(part.at + 28);
  try {
    inflateRawSync(b.subarray(start, start + part.packed), { maxOutputLength: Math.max(1, part.size) });
  } catch (e) {
    throw (e as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE' ? bomb() : broken('a part of it is damaged');
  }
}
