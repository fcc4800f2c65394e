import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { rootFolder } from '../../../store/index.ts';

/** A file of the gallery: what a person did, and what of the program it goes to. Exactly one of the ways is there. */
export interface Provoking {
  readonly code: string;
  readonly what: string;
  readonly record?: unknown;
  readonly outlook?: unknown;
  /** A whole document, asked as the command of that word asks it. */
  readonly usage?: unknown;
  readonly growth?: unknown;
  readonly structure?: unknown;
  readonly floor?: unknown;
  readonly teardown?: unknown;
  readonly directive?: unknown;
  /** The directive is adopted, not only read. */
  readonly adopt?: boolean;
  readonly formula?: string;
  readonly facts?: Readonly<Record<string, number>>;
  readonly file?: {
    readonly name: string;
    readonly text?: string;
    readonly times?: number;
    readonly base64?: string;
    readonly rows?: readonly unknown[][];
    readonly sheet?: string;
  };
  /** The file is taken into the log with this mapping, on this day. */
  readonly take?: { readonly columns?: Readonly<Record<string, number>>; readonly today?: string };
  readonly request?: {
    readonly method: 'GET' | 'POST' | 'DELETE';
    readonly url: string;
    readonly body?: unknown;
    readonly text?: string;
    readonly headers?: Readonly<Record<string, string>>;
  };
  readonly command?: readonly string[];
  /** What no file can hold; done by the step of this name. */
  readonly step?: string;
}

const folder = join(rootFolder(), 'examples', 'refusals');

/** Every file, by its code. */
export const provoking = (): Provoking[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ ...parse(readFileSync(join(folder, name), 'utf8')), code: name.slice(0, -'.yaml'.length) }));
