import { type Day, directive, teardown } from '../engine/index.ts';
import {
  DEMO,
  directives,
  fleet,
  floorKept,
  growthKept,
  structureKept,
  teardownsKept,
  usageKept,
  workKept,
} from '../examples/index.ts';
import type { KeptWord, NewEntry, Store } from '../store/index.ts';
import { newEntries } from './entries.ts';

export const adoption = (document: unknown, by: string, on: Day): NewEntry => ({
  subject: `directive:${(document as { number: string }).number.replace(/[^A-Za-z0-9._-]/g, '_')}`,
  kind: 'directive',
  day: on,
  order: 0,
  body: { document, by },
  schema: 'directive/1',
  evidence: 'seen',
});

const basis = (word: KeptWord, kept: { name: string; document: unknown }, by: string, on: Day): NewEntry => ({
  subject: `${word}:${kept.name}`,
  kind: `${word}_basis`,
  day: on,
  order: 0,
  body: { name: kept.name, document: kept.document, by },
  schema: `${word}/1`,
  evidence: 'seen',
});

const work = workKept.records.map(
  (record): NewEntry => ({
    subject: `teardown:${workKept.job}`,
    kind: 'teardown_work',
    day: record.on as Day,
    order: 0,
    body: teardown.zRecorded.parse(record),
    schema: 'teardown/1',
    evidence: 'seen',
  }),
);

/** Opens the invented scenario, a shop of its own; opening it again changes nothing. */
export async function openDemo(store: Store): Promise<string> {
  await store.shops.open({ id: DEMO.id, name: DEMO.name, invented: true });
  if ((await store.log.last(DEMO.id)) > 0) return DEMO.id;
  const day = DEMO.day as Day;
  const settings: NewEntry = {
    subject: 'shop',
    kind: 'settings',
    day,
    order: 0,
    body: DEMO.settings,
    schema: 'settings/1',
    evidence: 'seen',
  };
  const rules = directives.map((d) => adoption(directive.readDirective(d), DEMO.by, d.effective as Day));
  const bases = [basis('usage', usageKept, DEMO.by, day), basis('growth', growthKept, DEMO.by, day)];
  const room = [
    basis('structure', structureKept, DEMO.by, day),
    basis('floor', floorKept, DEMO.by, day),
    ...teardownsKept.map((kept) => basis('teardown', kept, DEMO.by, day)),
  ];
  const entries = [settings, ...rules, ...newEntries(fleet()), ...bases, ...room, ...work];
  await store.log.append(DEMO.id, entries, DEMO.by, new Date().toISOString(), { expectLast: 0 });
  return DEMO.id;
}
