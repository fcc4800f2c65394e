import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { letterPdf } from '../../documents/index.ts';
import { type Day, type directive, parseDocument } from '../../engine/index.ts';
import { type Letter, letterSheet, permitLines } from '../../sheets/index.ts';
import type { Store } from '../../store/index.ts';
import { type Desk, type Gathered, gather } from '../desk.ts';
import { PROGRAM } from '../version.ts';

const zLetter = z.strictObject({
  aircraft: z.string().min(1),
  directive: z.string().min(1),
  day: z.string().optional(),
});
interface Price {
  readonly directive: string;
  readonly action: string;
  readonly low_cents: number;
  readonly high_cents: number;
  readonly days: number;
}

/** The letter as data. Prices come from the shop's own list only. */
export function letterOf(g: Gathered, about: string, number: string): Letter {
  const settings = g.shop.settings as {
    address?: string;
    person?: string;
    telephone?: string;
    currency?: string;
    prices?: Price[];
  };
  const checked = g.model.entries.filter((e) => e.kind === 'list_checked' && e.subject === g.thing.id).at(-1);
  return letterSheet({
    shop: {
      name: g.shop.name,
      address: settings.address ?? '',
      person: settings.person ?? '',
      telephone: settings.telephone ?? '',
      invented: g.shop.invented,
    },
    aircraft: g.thing,
    parts: g.parts,
    lives: g.lives,
    assessments: g.assessments,
    outlooks: g.outlooks,
    directive: about,
    documents: g.documents,
    absent: g.model.findings.flatMap((x) => (x.code === 'directive.part-not-on-record' ? [x.text] : [])),
    permits: permitLines(g.model, g.thing.id, g.day),
    prices: settings.prices ?? [],
    currency: settings.currency,
    listChecked: checked ? { day: checked.day, by: (checked.body as { by: string }).by } : null,
    number,
    day: g.day,
    evidence: new Map(g.model.entries.map((e) => [e.id, e.evidence])),
  });
}

const answerOf = (a: directive.Assessment, g: Gathered) => ({
  part: a.subject,
  directive: a.directive,
  issue: a.issue,
  action: a.action.id,
  entry: g.known,
  program: PROGRAM,
  day: g.day,
  result: a,
  touches: [g.thing.id, ...g.parts.map((p) => p.id)],
});

/** Keeps the letter: the PDF by its content, the entry in the log under its number. */
export async function keepLetter(store: Store, g: Gathered, about: string, by: string, at: string) {
  const last = await store.log.last(g.shop.id);
  const number = `L-${last + 1}`;
  const pdf = await letterPdf(letterOf(g, about, number));
  const pdf_sha256 = await store.files.put(pdf, 'application/pdf');
  // What the letter rests on stays with it: inputs by their entry number, result and working, the program that made it.
  const answers = g.assessments.filter((a) => a.directive === about);
  await store.answers.put(
    g.shop.id,
    answers.map((a) => answerOf(a, g)),
  );
  await store.log.append(
    g.shop.id,
    [
      {
        subject: g.thing.id,
        kind: 'letter',
        day: g.day as Day,
        order: 0,
        body: { number, directive: about, pdf_sha256, known_to: g.known, program: PROGRAM, answers },
        schema: 'letter/1',
        evidence: 'seen',
      },
    ],
    by,
    at,
    { expectLast: last },
  );
  return { number, pdf, pdf_sha256 };
}

export function letterRoutes(api: FastifyInstance, desk: Desk): void {
  api.get<{ Params: { shop: string }; Querystring: Record<string, string> }>(
    '/shops/:shop/letters/preview',
    async (request) => {
      const q = parseDocument(zLetter, request.query, 'letter request');
      return letterOf(await gather(desk, request.params.shop, q.aircraft, q), q.directive, 'not kept yet');
    },
  );
  api.post<{ Params: { shop: string } }>('/shops/:shop/letters', async (request) => {
    const q = parseDocument(zLetter, request.body, 'letter request');
    const g = await gather(desk, request.params.shop, q.aircraft, q);
    const kept = await keepLetter(desk.store, g, q.directive, 'the desk', new Date().toISOString());
    return { number: kept.number, pdf: `/api/shops/${request.params.shop}/files/${kept.pdf_sha256}` };
  });
  api.get<{ Params: { shop: string }; Querystring: { aircraft?: string } }>('/shops/:shop/letters', async (request) =>
    desk.store.letters.list(request.params.shop, request.query.aircraft),
  );
}
