import { Refusal } from '../../foundation/refusal.ts';
import type { TeardownDocument } from '../document.ts';
import type { Floor } from '../floor-document.ts';
import type { Join, Need, StructureMap } from '../structure-document.ts';
import { indexOf, splitStep } from './index-of.ts';
import { idTwice, idUnknown, mapBroken } from './refuse.ts';

const once = (kind: string, names: readonly string[]) => {
  const seen = new Set<string>();
  for (const name of names) {
    if (seen.has(name)) throw idTwice(kind, name);
    seen.add(name);
  }
};
const ids = (all: readonly { readonly id: string }[]) => all.map((x) => x.id);
/** All steps that a need names. */
export const stepsIn = (need: Need): readonly string[] =>
  typeof need === 'string' ? [need] : need.any.flatMap((way) => (typeof way === 'string' ? [way] : way));

/** @throws Refusal `teardown.id-unknown` */
function requireStep(map: StructureMap, step: string, place: string): void {
  const [kind, of] = splitStep(step);
  const index = indexOf(map);
  const all = kind === 'off' ? index.part : kind === 'open' ? index.join : index.support;
  if (!all.has(of))
    throw idUnknown(place, step, kind === 'off' ? 'a part' : kind === 'open' ? 'a join' : 'a support', [...all.keys()]);
}

function requireHoles(join: Join): void {
  if (!join.holes) return;
  const { pilot, final, elongated, oversize } = join.holes;
  const sum = pilot + final + elongated + oversize;
  if (sum !== join.fasteners.count)
    throw mapBroken(
      `join "${join.id}" has ${join.fasteners.count} fasteners and ${sum} holes (pilot ${pilot}, final ${final}, elongated ${elongated}, oversize ${oversize})`,
      'as many holes as fasteners',
      'Count the row again, and correct the count or the holes',
    );
}

/**
 * What the schema of a map cannot say.
 * @throws Refusal `teardown.id-twice`, `teardown.id-unknown`, `teardown.map-broken`
 */
export function requireMap(map: StructureMap): void {
  once('the part or join', [...ids(map.parts), ...ids(map.joins)]);
  once('the support', ids(map.supports));
  once('the look or small job', [...ids(map.looks), ...ids(map.jobs)]);
  once('the gate', [
    ...ids(map.gates),
    ...map.gates.flatMap((g) => (g.wait_h > 0 ? [`${g.id}-wait`] : [])),
    ...map.parts.flatMap((p) => [`edge-${p.id}`, `again-${p.id}`]),
  ]);
  const index = indexOf(map);
  const parts = [...index.part.keys()];
  const needs = (place: string, own: string, all: readonly Need[]) => {
    for (const need of all) {
      for (const step of stepsIn(need)) requireStep(map, step, place);
      if (need === own)
        throw mapBroken(`${place} asks for ${own} first: it is in its own way`, 'what stands before it', 'Take it out');
    }
  };
  for (const p of map.parts) {
    needs(`part "${p.id}"`, `off:${p.id}`, p.needs);
    needs(`part "${p.id}" going back`, `off:${p.id}`, p.back_needs);
  }
  for (const j of map.joins) {
    needs(`join "${j.id}"`, `open:${j.id}`, j.needs);
    needs(`join "${j.id}" being closed`, `open:${j.id}`, j.close_needs);
    for (const layer of j.layers) if (!index.part.has(layer)) throw idUnknown(`join "${j.id}"`, layer, 'a part', parts);
    if (new Set(j.layers).size < j.layers.length)
      throw mapBroken(`join "${j.id}" holds a part to itself`, 'each part of a stack once', 'Take the second one out');
    requireHoles(j);
  }
  for (const s of map.supports) needs(`support "${s.id}"`, `support:${s.id}`, s.needs);
  for (const l of [...map.looks, ...map.jobs]) {
    needs(`"${l.id}"`, '', l.needs);
    if (!index.part.has(l.at) && !index.join.has(l.at)) throw idUnknown(`"${l.id}"`, l.at, 'a part or a join', parts);
  }
  for (const l of map.looks)
    for (const t of l.finding_targets)
      if (!index.part.has(t.part)) throw idUnknown(`a finding of "${l.id}"`, t.part, 'a part', parts);
  for (const g of map.gates) {
    for (const after of g.after)
      if (!map.gates.some((x) => x.id === after)) throw idUnknown(`gate "${g.id}"`, after, 'a gate', ids(map.gates));
    for (const step of g.only_if ?? []) requireStep(map, step, `gate "${g.id}"`);
  }
  for (const s of map.stated) {
    for (const step of s.steps) requireStep(map, step, `the order "${s.name}"`);
    for (const step of s.back) requireStep(map, step, `the way back of "${s.name}"`);
    once(`in the order "${s.name}" the step`, s.steps);
    once(`on the way back of "${s.name}" the step`, s.back);
    if (s.only_if && !index.part.has(s.only_if)) throw idUnknown(`the order "${s.name}"`, s.only_if, 'a part', parts);
  }
}

/** @throws Refusal `teardown.id-twice` */
export function requireFloor(floor: Floor): void {
  once(
    'of the crew',
    floor.crew.map((c) => c.name),
  );
  once('the jig', ids(floor.jigs));
  once(
    'the fastener code',
    floor.fasteners.map((f) => f.code),
  );
  once(
    'the consumable',
    floor.consumables.map((c) => c.name),
  );
}

/** @throws Refusal `teardown.id-unknown`, `teardown.map-broken`, `teardown.target-impossible` */
export function requireTeardown(document: TeardownDocument): void {
  const { map, floor } = document;
  const index = indexOf(map);
  const target = (t: { part: string; work: string }, place: string) => {
    const part = index.part.get(t.part);
    if (!part) throw idUnknown(place, t.part, 'a part', [...index.part.keys()]);
    if (part.stays && t.work !== 'reach')
      throw new Refusal('teardown.target-impossible', {
        given: `${place}: ${t.work} "${part.id}", which stays: the rest is taken off from it`,
        allowed: 'a part that can come off, or reach for one that stays',
        remedy: 'Name the part that is taken off, or change the map where this one is not the body',
      });
  };
  for (const t of document.targets.flatMap((t) => ('any' in t ? t.any : [t]))) target(t, 'a target');
  const extras = [...index.look.keys(), ...index.job.keys()];
  for (const [list, name] of [
    [document.wanted, 'wanted'],
    [document.unwanted, 'unwanted'],
  ] as const)
    for (const id of list) if (!extras.includes(id)) throw idUnknown(name, id, 'a look or small job', extras);
  const both = document.wanted.find((id) => document.unwanted.includes(id));
  if (both)
    throw mapBroken(`"${both}" is wanted and unwanted`, 'one of the two', 'Take it out of one of the two lists');
  for (const step of document.also) requireStep(map, step, 'also');
  const join = (id: string, place: string) => {
    const found = index.join.get(id);
    if (!found) throw idUnknown(place, id, 'a join', [...index.join.keys()]);
    return found;
  };
  for (const e of document.edge_distances) {
    join(e.join, 'an edge distance');
    if (!index.part.has(e.part)) throw idUnknown('an edge distance', e.part, 'a part', [...index.part.keys()]);
  }
  for (const r of document.recorded) {
    if (r.what === 'holes') {
      const { id, fasteners } = join(r.join, 'recorded holes');
      if (r.elongated + r.oversize > fasteners.count)
        throw mapBroken(
          `recorded on ${r.on}: ${r.elongated + r.oversize} spoiled holes in join "${id}" of ${fasteners.count}`,
          'at most one hole for each fastener',
          'Count the row again',
        );
    }
    if (r.what === 'found') {
      if (!index.look.has(r.look)) throw idUnknown('a recorded finding', r.look, 'a look', [...index.look.keys()]);
      for (const t of r.targets) target(t, `what ${r.look} found`);
    }
  }
  if (floor)
    for (const o of document.others)
      if (!floor.jigs.some((j) => j.id === o.jig)) throw idUnknown(`"${o.name}"`, o.jig, 'a jig', ids(floor.jigs));
}
