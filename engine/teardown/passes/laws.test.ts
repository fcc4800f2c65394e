import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomSource } from '../../foundation/random.ts';
import { STAGES } from '../structure-document.ts';
import { wingOf } from './context.ts';
import { reassemble, withGates } from './index.ts';
import { randomWing } from './testing/random-wing.ts';
import { anotherOrder, positions, walk } from './testing/replayed.ts';

const RUNS = { numRuns: 150 };
const law = (check: (wing: typeof randomWing extends fc.Arbitrary<infer T> ? T : never) => void) =>
  fc.assert(fc.property(randomWing, check), RUNS);

describe('whatever the wing', () => {
  it('ends fitted, every row closed once, each step after what it waits for', () =>
    law(({ document, opened }) => {
      expect(walk(reassemble(document, opened).operations, opened, document.map)).toEqual({ off: [], open: [] });
    }));

  it('so does every other order that keeps what each step waits for', () =>
    fc.assert(
      fc.property(randomWing, fc.nat(1000), ({ document, opened }, seed) => {
        const { operations } = reassemble(document, opened);
        const random = randomSource(seed);
        const orders = [
          anotherOrder(operations, (n) => n - 1),
          anotherOrder(operations, (n) => Math.floor(random.next() * n)),
        ];
        for (const order of orders) expect(walk(order, opened, document.map)).toEqual({ off: [], open: [] });
      }),
      RUNS,
    ));

  it('no row is closed for good before the dry pass came apart, was deburred, coated and dry', () =>
    law(({ document, opened }) => {
      const { operations } = reassemble(document, opened);
      const last = operations.findLastIndex((o) =>
        ['drill', 'unclip', 'apart', 'deburr', 'convert', 'prime', 'dry'].includes(o.kind),
      );
      const first = operations.findIndex((o) => o.kind === 'close');
      if (first >= 0) expect(first).toBeGreaterThan(last);
      const dried = operations.find((o) => o.kind === 'dry')?.id;
      const rows = new Set(operations.filter((o) => o.kind === 'unclip').map((o) => o.of));
      if (dried) for (const o of operations) if (o.kind === 'close' && rows.has(o.of)) expect(o.after).toContain(dried);
    }));

  it('the edge distance of each new part and the jig come before the first drill, and no attach bolt is drilled', () =>
    law(({ document, opened }) => {
      const { operations } = reassemble(document, opened);
      const attach = new Set(document.map.joins.filter((j) => j.attach).map((j) => j.id));
      for (const o of operations.filter((x) => x.kind === 'drill')) {
        expect(attach.has(o.of)).toBe(false);
        for (const p of opened.replaced)
          if (document.map.joins.find((j) => j.id === o.of)!.layers.includes(p))
            expect(o.after).toContain(`edge_check:${p}`);
        expect(o.after).toContain(operations.find((x) => x.kind === 'jig_check')!.id);
      }
    }));

  it('a row that asks for the jig is measured, clipped, before it is riveted', () =>
    law(({ document, opened }) => {
      const { operations } = reassemble(document, opened);
      const at = positions(operations);
      for (const j of document.map.joins.filter((x) => x.jig_before_rivets && !x.attach)) {
        const close = at.get(`close:${j.id}`)!;
        const held = operations.slice(0, close).findLastIndex((o) => {
          if (o.kind === 'clip' || o.kind === 'reclip') return o.of === j.id;
          return (o.kind === 'put' || o.kind === 'refit') && j.layers.includes(o.of);
        });
        const measured = operations
          .slice(0, close)
          .findLastIndex((o) => o.kind === 'jig_check' || o.kind === 'jig_recheck');
        expect(measured, j.id).toBeGreaterThan(held);
      }
    }));

  it('closing rows come last among the rows, or it is said', () =>
    law(({ document, opened }) => {
      const { operations, findings } = reassemble(document, opened);
      const rows = new Set(wingOf(document, opened).rows);
      const closing = (id: string) => document.map.joins.find((j) => j.id === id)!.closing_row;
      const closes = operations.filter((o) => o.kind === 'close' && rows.has(o.of));
      const firstClosing = closes.findIndex((o) => closing(o.of));
      const lastOther = closes.findLastIndex((o) => !closing(o.of));
      if (firstClosing >= 0 && lastOther > firstClosing)
        expect(findings.map((f) => f.code)).toContain('order-given-up');
    }));

  it('what must still be off is off when a row is closed or a part goes in, or it is said', () =>
    law(({ document, opened }) => {
      const { operations, findings } = reassemble(document, opened);
      const said = new Set(
        findings.filter((f) => f.code === 'order-given-up' || f.code === 'way-back-shut').flatMap((f) => f.about),
      );
      const off = new Set(opened.off);
      for (const o of operations) {
        if (o.kind === 'close' && !said.has(o.of))
          for (const n of document.map.joins.find((j) => j.id === o.of)!.close_needs)
            expect(off.has(String(n).slice(4))).toBe(true);
        if (o.kind === 'put' || o.kind === 'refit') {
          if (!said.has(o.of))
            for (const n of document.map.parts.find((p) => p.id === o.of)!.back_needs)
              expect(off.has(String(n).slice(4))).toBe(true);
          off.delete(o.of);
        }
        if (o.kind === 'apart') off.add(o.of);
      }
    }));

  it('a sealed row begins after its sealant, within its working life, with no drying between', () =>
    law(({ document, opened }) => {
      const { operations } = reassemble(document, opened);
      const at = positions(operations);
      for (const o of operations.filter((x) => x.within)) {
        const life = document.map.joins.find((j) => j.id === o.of)!.sealant!.working_life_min;
        expect(o.within!.min).toBeLessThanOrEqual(life);
        expect(o.within!.min).toBeGreaterThan(0);
        const between = operations.slice(at.get(o.within!.of), at.get(o.id));
        expect(between.some((x) => x.kind === 'dry')).toBe(false);
      }
    }));

  it('a look before closing is done while it can be: before what hides it', () =>
    law(({ document, opened }) => {
      const { operations } = reassemble(document, opened);
      const at = positions(operations);
      for (const l of document.map.looks.filter((x) => x.needs.length > 0)) {
        const part = String(l.needs[0]).slice(4);
        const fitted = operations.findLastIndex((o) => (o.kind === 'put' || o.kind === 'refit') && o.of === part);
        expect(at.get(`closing_look:${l.id}`)).toBeLessThan(fitted);
        expect(operations[fitted]!.after).toContain(`closing_look:${l.id}`);
      }
    }));

  it('each gate stands before everything of its stage, after everything of the stages before', () =>
    law(({ document, opened }) => {
      const operations = withGates(document.map, reassemble(document, opened).operations);
      const at = positions(operations);
      const reach = (from: string, seen = new Set<string>()): Set<string> => {
        for (const a of operations[at.get(from)!]!.after) if (at.has(a) && !seen.has(a)) reach(a, seen.add(a));
        return seen;
      };
      for (const g of operations.filter((o) => o.kind === 'gate' && !o.id.startsWith('gate:edge-'))) {
        const behind = reach(g.id);
        for (const o of operations.filter((x) => x.kind !== 'gate')) {
          const [here, there] = [STAGES.indexOf(g.stage), STAGES.indexOf(o.stage)];
          if (there < here) expect(behind.has(o.id), `${g.id} after ${o.id}`).toBe(true);
          if (there === here) expect(reach(o.id).has(g.id), `${o.id} after ${g.id}`).toBe(true);
        }
      }
    }));
});
