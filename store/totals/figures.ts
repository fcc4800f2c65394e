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
  const [text, rows, spans, readings] = [0, 4, 8, 12].map((at) => bytes.readInt32LE(at)) as [
    number,
    number,
    number,
    number,
  ];
  let at = 16;
  const figures = (length: number): Int32Array => {
    const copy = new Uint8Array(4 * length);
    copy.set(bytes.subarray(at, at + 4 * length));
    at += 4 * length;
    return new Int32Array(copy.buffer);
  };
  const found = { rows: figures(rows), spans: figures(spans), readings: figures(readings) };
  return { uses: record.USES, ...JSON.parse(bytes.toString('utf8', at, at + text)), ...found };
}
