import { record } from '../../engine/index.ts';

type Sums = record.Sums;
const USUAL = record.USES.join();

/** Sums as bytes: words as JSON, then rows, spans and readings as whole numbers of four bytes, lowest byte first. */
export function bytesOf(s: Sums): Buffer {
  const { rows, spans, readings, uses, ...words } = s;
  const text = Buffer.from(JSON.stringify(uses.join() === USUAL ? words : { ...words, uses }));
  const lengths = [text.length, rows.length, spans.length, readings.length];
  const out = Buffer.alloc(4 * (4 + rows.length + spans.length + readings.length) + text.length);
  let at = 0;
  for (const list of [lengths, rows, spans, readings]) for (const n of list) at = out.writeInt32LE(n, at);
  text.copy(out, at);
  return out;
}

/** @see bytesOf */
export function sumsFromBytes(bytes: Buffer): Sums {
  const text = bytes.readInt32LE(0);
  const [rows, spans, readings] = [bytes.readInt32LE(4), bytes.readInt32LE(8), bytes.readInt32LE(12)];
  const whole = new Int32Array(rows + spans + readings);
  const at = 16 + whole.byteLength;
  new Uint8Array(whole.buffer).set(bytes.subarray(16, at));
  const found = {
    rows: whole.subarray(0, rows),
    spans: whole.subarray(rows, rows + spans),
    readings: whole.subarray(rows + spans),
  };
  return { uses: record.USES, ...JSON.parse(bytes.toString('utf8', at, at + text)), ...found };
}
