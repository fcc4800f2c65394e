import { createHash } from 'node:crypto';
import { Transform } from 'node:stream';
import { crc32, createGzip } from 'node:zlib';
import { damaged } from '../carry.ts';

/**
 * A backup is one gzip file that any unpacker reads. Its last, uncompressed member is the seal: length and SHA-256 of
 * all bytes before it, byte for byte predictable. So no cut and no flipped bit passes, not even one that unpacking would not see.
 */
function sealOf(bytes: number, sha256: string): Buffer {
  const line = Buffer.from(`${JSON.stringify({ seal: { bytes: String(bytes).padStart(15, '0'), sha256 } })}\n`);
  const sizes = Buffer.alloc(5);
  sizes.writeUInt8(1, 0);
  sizes.writeUInt16LE(line.length, 1);
  sizes.writeUInt16LE(line.length ^ 0xffff, 3);
  const check = Buffer.alloc(8);
  check.writeUInt32LE(crc32(line), 0);
  check.writeUInt32LE(line.length, 4);
  return Buffer.concat([Buffer.from('1f8b08000000000000ff', 'hex'), sizes, line, check]);
}
const SEAL_LENGTH = sealOf(0, '0'.repeat(64)).length;

export const packed = () => createGzip({ level: 6 });

/** Closes a stream of bytes with the seal. */
export function sealing(): Transform {
  const hash = createHash('sha256');
  let bytes = 0;
  return new Transform({
    transform(chunk: Buffer, _, done) {
      hash.update(chunk);
      bytes += chunk.length;
      done(null, chunk);
    },
    flush(done) {
      done(null, sealOf(bytes, hash.digest('hex')));
    },
  });
}

/** Takes the seal off again; the stream ends well only if the seal agrees. */
export function unsealing(): Transform {
  const hash = createHash('sha256');
  let bytes = 0;
  let held = Buffer.alloc(0);
  return new Transform({
    transform(chunk: Buffer, _, done) {
      held = Buffer.concat([held, chunk]);
      const out = held.subarray(0, Math.max(0, held.length - SEAL_LENGTH));
      held = Buffer.from(held.subarray(out.length));
      hash.update(out);
      bytes += out.length;
      done(null, out);
    },
    flush(done) {
      done(held.equals(sealOf(bytes, hash.digest('hex'))) ? null : damaged('it was cut short or has changed'));
    },
  });
}
