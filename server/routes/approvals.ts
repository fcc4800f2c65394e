import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type Day, directive, parseDocument, Refusal, record } from '../../engine/index.ts';
import { type ApprovalRow, approvalsSheet, type Hit, partName, revokingSheet } from '../../sheets/index.ts';
import type { NewEntry } from '../../store/index.ts';
import { adoptedDirectives, type Desk, dayOf, gather, policyOf } from '../desk.ts';
import { recordEntries } from '../entries.ts';

const zRevoking = z.strictObject({ reference: z.string().trim().min(1).max(200), day: z.string().optional() });
type Approval = directive.Alternative | directive.Permit;
const KINDS = ['aircraft', 'part', 'attribute', 'fitment', 'removal', 'alternative', 'permit', 'revocation'];
const isPermit = (a: Approval): a is directive.Permit => 'issuedBy' in a;

/** Every approval of a shop with its state on a day: only what names and moves a part, and the approvals, are read. */
async function approvalsOf(desk: Desk, shopId: string, day: Day) {
  const shop = await desk.store.shops.get(shopId);
  const given = await desk.store.log.read(shopId, { kinds: ['alternative', 'permit'], inForce: true });
  const circles = await Promise.all(
    [...new Set(given.map((e) => e.subject))].map((id) => desk.store.aircraft.circle(shopId, id)),
  );
  const subjects = [...new Set([...circles.flat(), 'shop'])];
  const log = await desk.store.log.read(shopId, { kinds: KINDS, subjects, inForce: true });
  const entries = recordEntries(log.map(({ replaces: _, ...e }) => e)).filter((e) => e.day <= day);
  const model = record.modelOf({ day, entries, policy: policyOf(shop.settings), invented: shop.invented });
  const aircraft = [...model.things.values()].filter((t) => t.kind === 'aircraft');
  const all: Approval[] = [
    ...directive.alternativesOf(model, day),
    ...aircraft.flatMap((a) => directive.permitsOf(model, a.id, day)),
  ];
  return { shop, model, all };
}
const subjectOf = (a: Approval, model: record.RecordModel): string =>
  model.entries.find((e) => e.id === a.entry)?.subject ?? '';

/** "ZQ-GUL" or "ZQ-GUL, right walkway doubler". */
function named(model: record.RecordModel, id: string): string {
  const thing = model.things.get(id);
  if (!thing || thing.kind === 'aircraft') return partName(thing, id);
  const aircraft = thing.aircraft ? partName(model.things.get(thing.aircraft)) : 'fitted nowhere';
  return `${aircraft}, ${partName(thing).toLowerCase()}`;
}

function rowsOf(model: record.RecordModel, all: readonly Approval[]): ApprovalRow[] {
  const rows = new Map<string, ApprovalRow>();
  for (const a of all) {
    const alternative = isPermit(a) ? null : a;
    const base = {
      what: alternative ? ('alternative' as const) : ('permit' as const),
      reference: a.reference,
      directive: a.directive,
      action: alternative?.action ?? null,
      does: !alternative ? ('permits' as const) : alternative.endsAction ? ('ends' as const) : ('extends' as const),
      extends_h: alternative?.extends_h ?? null,
      issuedBy: isPermit(a) ? a.issuedBy : null,
      conditions: a.conditions,
      expires: a.expires,
      state: a.state,
      because: a.revoked ? [`revoked ${a.revoked.on}`, a.revoked.because].filter(Boolean).join(': ') : null,
    };
    const key = JSON.stringify(base);
    const subjects = [...(rows.get(key)?.subjects ?? []), named(model, subjectOf(a, model))];
    rows.set(key, { ...base, subjects });
  }
  return [...rows.values()].sort((a, b) => (a.state === b.state ? 0 : a.state === 'in force' ? -1 : 1));
}

/** Alternatives and permits of a shop, and whom a revocation would hit before anyone revokes. */
export function approvalRoutes(api: FastifyInstance, desk: Desk): void {
  const { store } = desk;
  api.get<{ Params: { shop: string }; Querystring: { day?: string } }>(
    '/shops/:shop/fleet/approvals',
    async (request) => {
      const day = dayOf(desk, request.query.day);
      const { shop, model, all } = await approvalsOf(desk, request.params.shop, day);
      return approvalsSheet({ rows: rowsOf(model, all), shop, day });
    },
  );
  /** What the forms of that page can choose from. */
  api.get<{ Params: { shop: string } }>('/shops/:shop/fleet/approvals/choices', async (request) => {
    const day = dayOf(desk, undefined);
    const { all } = await approvalsOf(desk, request.params.shop, day);
    const { documents } = await adoptedDirectives(desk, request.params.shop);
    const holding = all.filter((a) => a.state === 'in force' || a.state === 'not yet in force');
    return {
      day,
      references: [...new Set(holding.map((a) => a.reference))],
      aircraft: (await store.aircraft.list(request.params.shop)).map(({ id, registration, serial }) => ({
        id,
        registration,
        serial,
      })),
      directives: directive.inForce(documents, day).map((d) => ({
        number: d.number,
        issue: d.issue,
        title: d.title,
        actions: d.actions.map(({ id, title }) => ({ id, title })),
      })),
    };
  });
  api.get<{ Params: { shop: string }; Querystring: Record<string, string> }>(
    '/shops/:shop/fleet/approvals/revoking',
    async (request) => {
      const asked = parseDocument(zRevoking, request.query, 'question of a revocation');
      return revoking(desk, request.params.shop, asked.reference, dayOf(desk, asked.day));
    },
  );
}

async function revoking(desk: Desk, shopId: string, reference: string, day: Day) {
  const { shop, model, all } = await approvalsOf(desk, shopId, day);
  const meant = all.filter((a) => a.reference === reference && a.state !== 'revoked');
  if (meant.length === 0)
    throw new Refusal('approvals.reference-unknown', {
      given: `an approval with the reference "${reference}"`,
      allowed: 'the reference of an alternative or a permit that is on record and not revoked',
      remedy: 'Choose one from the list',
    });
  const subjects = [...new Set(meant.map((a) => subjectOf(a, model)))];
  const aircraft = new Set(subjects.flatMap((id) => model.things.get(id)?.aircraft ?? []));
  const revocation: NewEntry = {
    subject: 'shop',
    kind: 'revocation',
    day,
    order: 9999,
    body: { reference },
    schema: 'record/1',
    evidence: 'statement',
  };
  const hits: Hit[] = [];
  const hit = new Set<string>();
  for (const id of aircraft) {
    const now = await gather(desk, shopId, id, { day });
    const then = await gather(desk, shopId, id, { day, extra: [revocation] });
    for (const a of now.assessments) {
      if (a.alternative?.reference !== reference) continue;
      const b = then.assessments.find(
        (x) => x.subject === a.subject && x.directive === a.directive && x.action.id === a.action.id,
      );
      if (!b) continue;
      hit.add(subjectOf(meant.find((m) => m.entry === a.alternative?.entry) ?? meant[0]!, model));
      hits.push({
        aircraft: partName(now.thing),
        href: `/${shopId}/aircraft/${encodeURIComponent(id)}/compliance`,
        part: partName(now.model.things.get(a.subject), a.subject),
        now: a,
        after: b,
      });
    }
  }
  const rest = subjects.filter((id) => !hit.has(id)).map((id) => named(model, id));
  const known = await desk.store.log.last(shopId);
  return revokingSheet({ reference, hits, rest, known, shop, day });
}
