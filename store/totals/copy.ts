import type pg from 'pg';

/** Lines held before the connection is told to wait. */
const MOST_BYTES = 4_000_000;

interface Connection {
  readonly stream: { pause(): void; resume(): void };
  query(text: string): void;
}

/**
 * `COPY ... TO STDOUT` as batches of raw lines: the way to read millions of rows out without making an object of each.
 * The connection waits while nobody takes them.
 */
class CopyOut<Line> {
  readonly #text: string;
  readonly #take: (chunk: Buffer) => Line;
  #lines: Line[] = [];
  #bytes = 0;
  #over = false;
  #error: Error | null = null;
  #wake: (() => void) | null = null;
  #connection: Connection | null = null;
  /** @param take what to keep of a line at once: its bytes are overwritten by what comes after */
  constructor(text: string, take: (chunk: Buffer) => Line) {
    this.#text = text;
    this.#take = take;
  }
  submit(connection: unknown): void {
    this.#connection = connection as Connection;
    this.#connection!.query(this.#text);
  }
  handleCopyData(message: { readonly chunk: Buffer }): void {
    this.#lines.push(this.#take(message.chunk));
    this.#bytes += message.chunk.length;
    if (this.#bytes > MOST_BYTES) this.#connection!.stream.pause();
    this.#stir();
  }
  handleError(error: Error): void {
    this.#error = error;
    this.#end();
  }
  handleReadyForQuery(): void {
    this.#end();
  }
  handleRowDescription(): void {}
  handleDataRow(): void {}
  handleCommandComplete(): void {}
  handleEmptyQuery(): void {}
  handlePortalSuspended(): void {}
  #end(): void {
    this.#over = true;
    this.#stir();
  }
  #stir(): void {
    this.#wake?.();
    this.#wake = null;
  }
  /** The next lines, or null at the end. */
  async take(): Promise<Line[] | null> {
    while (this.#lines.length === 0 && !this.#over)
      await new Promise<void>((wake) => {
        this.#wake = wake;
      });
    if (this.#error) throw this.#error;
    if (this.#lines.length === 0) return null;
    const lines = this.#lines;
    this.#lines = [];
    this.#bytes = 0;
    this.#connection!.stream.resume();
    return lines;
  }
}

async function* copied<Line>(
  client: pg.ClientBase,
  text: string,
  keep: (chunk: Buffer) => Line,
): AsyncGenerator<Line[]> {
  const copy = client.query(new CopyOut(text, keep) as never) as unknown as CopyOut<Line>;
  for (let lines = await copy.take(); lines; lines = await copy.take()) yield lines;
}
/** Fields of the rows of `COPY (query) TO STDOUT`, in batches as they come. */
export const copyText = (client: pg.ClientBase, query: string): AsyncGenerator<string[][]> =>
  copied(client, `copy (${query}) to stdout`, splitLine);

const HEADER = 'PGCOPY\n\xff\r\n\0';
/** Rows of `COPY (query) TO STDOUT (FORMAT BINARY)`, one list per message: the bytes of each field, null for null. */
export const copyBytes = (client: pg.ClientBase, query: string): AsyncGenerator<(Buffer | null)[][][]> =>
  copied(client, `copy (${query}) to stdout (format binary)`, (chunk) => fieldsOf(Buffer.from(chunk)));

function fieldsOf(chunk: Buffer): (Buffer | null)[][] {
  let at = chunk.toString('latin1', 0, HEADER.length) === HEADER ? HEADER.length + 8 : 0;
  const rows: (Buffer | null)[][] = [];
  while (at < chunk.length) {
    const count = chunk.readInt16BE(at);
    at += 2;
    if (count < 0) break;
    const row: (Buffer | null)[] = [];
    for (let i = 0; i < count; i++) {
      const length = chunk.readInt32BE(at);
      at += 4;
      row.push(length < 0 ? null : chunk.subarray(at, at + length));
      at += Math.max(0, length);
    }
    rows.push(row);
  }
  return rows;
}

const ESCAPED: Readonly<Record<string, string>> = { n: '\n', t: '\t', r: '\r', b: '\b', f: '\f', v: '\v' };
/** The fields of a line of text. */
function splitLine(line: Buffer): string[] {
  const fields = line.toString('utf8', 0, line.length - 1).split('\t');
  return line.includes(0x5c) ? fields.map((f) => f.replaceAll(/\\(.)/gs, (_, c: string) => ESCAPED[c] ?? c)) : fields;
}
