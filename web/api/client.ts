import { jsonText } from '../parts/write/json-text.ts';

/** What the server said no to, in the three lines that every face shows. */
export interface RefusalLines {
  readonly code: string;
  readonly given: string;
  readonly allowed: string;
  readonly remedy: string;
  readonly source?: string;
}

export class ServerSaidNo extends Error {
  readonly refusal: RefusalLines;
  readonly status: number;
  constructor(refusal: RefusalLines, status: number) {
    super(refusal.given);
    this.name = 'ServerSaidNo';
    this.refusal = refusal;
    this.status = status;
  }
}

/** The request never got an answer. */
export class ServerGone extends Error {
  constructor() {
    super('The server does not answer');
    this.name = 'ServerGone';
  }
}

const text = (v: unknown): string | undefined => (typeof v === 'string' ? v : undefined);

/** Reads a refusal from an answer, wherever it lies in it. */
export function refusalOf(answer: unknown, status: number): RefusalLines {
  const outer = (answer ?? {}) as Record<string, unknown>;
  const inner = (outer.refusal ?? outer.error ?? outer) as Record<string, unknown>;
  const detail = (typeof inner.detail === 'object' && inner.detail !== null ? inner.detail : inner) as Record<
    string,
    unknown
  >;
  const source = text(detail.source);
  return {
    code: text(inner.code) ?? `http-${status}`,
    given: text(detail.given) ?? text(inner.message) ?? `The server answered with number ${status}`,
    allowed: text(detail.allowed) ?? 'an answer without a fault of the program',
    remedy: text(detail.remedy) ?? 'Try again. If it comes back, look at what the server printed in its terminal',
    ...(source ? { source } : {}),
  };
}

async function answerOf(response: Response): Promise<unknown> {
  const body = await response.text();
  let answer: unknown = null;
  try {
    answer = body === '' ? null : JSON.parse(body);
  } catch {
    answer = null;
  }
  if (!response.ok) throw new ServerSaidNo(refusalOf(answer, response.status), response.status);
  return answer;
}

async function ask(path: string, init?: RequestInit): Promise<unknown> {
  let response: Response;
  try {
    response = await fetch(path, init);
  } catch {
    throw new ServerGone();
  }
  return answerOf(response);
}

/** What is new under a path, with its tag; null where it is still what the tag says. */
export async function getIfNew<T>(path: string, tag: string | undefined): Promise<{ tag: string; answer: T } | null> {
  let response: Response;
  try {
    response = await fetch(path, tag ? { headers: { 'if-none-match': tag } } : {});
  } catch {
    throw new ServerGone();
  }
  if (response.status === 304) return null;
  return { tag: response.headers.get('etag') ?? '', answer: (await answerOf(response)) as T };
}
export const get = <T>(path: string): Promise<T> => ask(path) as Promise<T>;
export const remove = (path: string): Promise<unknown> => ask(path, { method: 'DELETE' });
export const post = <T>(path: string, body: unknown): Promise<T> =>
  ask(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: jsonText(body),
  }) as Promise<T>;

/** Sends a file and tells how much of it has left; `null` when all has, and the server reads. */
export function postFile<T>(path: string, file: File, sent: (part: number | null) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    const form = new FormData();
    form.append('file', file, file.name);
    const request = new XMLHttpRequest();
    request.open('POST', path);
    request.upload.onprogress = (e) => sent(e.lengthComputable ? e.loaded / e.total : null);
    request.upload.onload = () => sent(null);
    request.onerror = () => reject(new ServerGone());
    request.onload = () =>
      answerOf(new Response(request.responseText, { status: request.status === 0 ? 500 : request.status })).then(
        (a) => resolve(a as T),
        reject,
      );
    request.send(form);
  });
}
