import fc from 'fast-check';
import type { TeardownDocument } from '../../document.ts';
import type { StructureInput } from '../../structure-document.ts';
import type { Opened } from '../model.ts';
import { part, row, smallJob, smallMap } from './small-wing.ts';

/**
 * A random wing and what a teardown of it opens: parts off in a random order, every row that holds one of them open. What
 * must be off on the way out or back is off earlier, so that the way back exists.
 */
export const randomWing: fc.Arbitrary<{ document: TeardownDocument; opened: Opened }> = fc
  .record({
    count: fc.integer({ min: 2, max: 7 }),
    kinds: fc.array(fc.constantFrom('spar', 'skin', 'rib', 'nose_section', 'tank', 'panel', 'fairing'), {
      minLength: 7,
      maxLength: 7,
    }),
    rows: fc.array(
      fc.record({
        layers: fc.uniqueArray(fc.nat(7), { minLength: 2, maxLength: 4 }),
        rivet: fc.boolean(),
        jig: fc.boolean(),
        closing: fc.boolean(),
        attach: fc.boolean(),
        life: fc.option(fc.integer({ min: 15, max: 200 })),
        count: fc.integer({ min: 1, max: 30 }),
        spoiled: fc.nat(2),
        earlier: fc.option(fc.nat(6)),
      }),
      { minLength: 1, maxLength: 9 },
    ),
    backs: fc.array(fc.option(fc.nat(6)), { minLength: 7, maxLength: 7 }),
    replaced: fc.array(fc.boolean(), { minLength: 7, maxLength: 7 }),
    looks: fc.array(fc.nat(6), { maxLength: 2 }),
  })
  .map(({ count, kinds, rows, backs, replaced, looks }) => {
    // part p0 comes off first; part 7 is the body that stays
    const name = (i: number) => (i >= count ? 'body' : `p${i}`);
    const map: StructureInput = smallMap();
    map.parts = [
      part('body', 'other', { stays: true, side: 'both' }),
      ...Array.from({ length: count }, (_, i) =>
        part(`p${i}`, kinds[i] as 'spar', {
          back_needs: backs[i] !== null && backs[i]! < i ? [`off:p${backs[i]}`] : [],
        }),
      ),
    ];
    map.joins = rows.flatMap((r, k) => {
      const layers = [...new Set(r.layers.map(name))];
      if (layers.length < 2) return [];
      const first = Math.min(...r.layers.filter((l) => l < count));
      const attach = r.attach && !r.rivet;
      return [
        row(`j${k}`, layers, {
          jig_before_rivets: r.jig,
          closing_row: r.closing,
          attach,
          close_needs: r.earlier !== null && r.earlier < first ? [`off:p${r.earlier}`] : [],
          ...(r.life !== null && r.rivet ? { sealant: { name: 'S', working_life_min: r.life, cure_h: 2 } } : {}),
          fasteners: r.rivet ? { count: r.count } : { kind: 'bolt', code: 'AN4', count: r.count },
          holes: {
            pilot: 0,
            final: r.count - Math.min(r.count, r.spoiled),
            elongated: Math.min(r.count, r.spoiled),
            oversize: 0,
          },
        }),
      ];
    });
    map.looks = looks.map((at, k) => ({
      ...smallMap().looks![0]!,
      id: `look${k}`,
      at: name(at),
      needs: at < count ? [`off:p${at}`] : [],
    }));
    map.stated = [];
    const off = Array.from({ length: count }, (_, i) => `p${i}`);
    const open = map.joins.map((j) => ({
      id: j.id,
      first: Math.min(...j.layers.filter((l) => l !== 'body').map((l) => Number(l.slice(1)))),
    }));
    open.sort((a, b) => a.first - b.first);
    return {
      document: smallJob({ map, targets: [{ part: 'p0', work: 'reach' }] }),
      opened: { off, open: open.map((j) => j.id), replaced: off.filter((_, i) => replaced[i]), supports: ['trestle'] },
    };
  });
