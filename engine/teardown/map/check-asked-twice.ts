import type { MapFinding } from '../model.ts';
import type { Need, StructureMap } from '../structure-document.ts';
import type { Graph } from './graph.ts';
import { graphOf } from './graph-of.ts';
import { stepTitle } from './index-of.ts';

interface Asking {
  readonly id: string;
  readonly name: string;
  readonly needs: readonly Need[];
  /** What it needs anyway, without being told. */
  readonly given: readonly string[];
}

/** Needs that stand there twice, or that another need of the same thing brings along anyway. */
export function askedTwice(map: StructureMap): MapFinding[] {
  const graph = graphOf(map);
  const brings = bringsOf(graph);
  const holding = (part: string) => map.joins.filter((j) => j.layers.includes(part)).map((j) => `open:${j.id}`);
  const asking: Asking[] = [
    ...map.parts.map((p) => ({ id: p.id, name: p.name, needs: p.needs, given: holding(p.id) })),
    ...[...map.joins, ...map.supports, ...map.looks, ...map.jobs].map((x) => ({
      id: x.id,
      name: x.name,
      needs: x.needs,
      given: [] as string[],
    })),
  ];
  return asking.flatMap((a) => twice(map, a, brings));
}

function twice(map: StructureMap, { id, name, needs, given }: Asking, brings: (step: string) => ReadonlySet<string>) {
  const findings: MapFinding[] = [];
  const say = (text: string, about: readonly string[]) =>
    findings.push({
      code: 'asked-twice',
      text: `${name}: ${text}`,
      about: [id, ...about],
      remedy: 'Leave it out once',
    });
  const seen = new Set<string>();
  for (const need of needs) {
    const key = JSON.stringify(need);
    if (seen.has(key)) say(`${words(map, need)} is asked for twice`, []);
    seen.add(key);
  }
  const plain = needs.filter((n) => typeof n === 'string');
  const all = [...plain, ...given];
  for (const need of new Set(plain)) {
    if (given.includes(need)) {
      say(`${stepTitle(map, need)} is asked for, and every row that holds it must be open anyway`, []);
      continue;
    }
    const by = all.find((other) => other !== need && brings(other).has(need) && !brings(need).has(other));
    if (by) say(`${stepTitle(map, need)} is asked for, and ${stepTitle(map, by)} brings it along`, [by.split(':')[1]!]);
  }
  for (const need of needs) {
    if (typeof need === 'string') continue;
    const met = need.any.find(
      (way) => typeof way === 'string' && all.some((other) => other === way || brings(other).has(way)),
    );
    if (typeof met === 'string')
      say(`of "${words(map, need)}" one is asked for anyway: ${stepTitle(map, met)}`, [met.split(':')[1]!]);
  }
  return findings;
}
const words = (map: StructureMap, need: Need): string =>
  typeof need === 'string'
    ? stepTitle(map, need)
    : need.any.map((w) => (typeof w === 'string' ? [w] : w).map((s) => stepTitle(map, s)).join(' and ')).join(' or ');

/** What every way to a step does before it, through needs that leave no choice; looked up once each. */
function bringsOf(graph: Graph): (step: string) => ReadonlySet<string> {
  const known = new Map<string, ReadonlySet<string>>();
  return (step) => {
    const made = known.get(step);
    if (made) return made;
    const found = new Set<string>();
    const rest = [graph.index(step)];
    for (let i = rest.pop(); i !== undefined; i = rest.pop())
      for (const clause of graph.clauses[i] ?? [])
        if (clause.length === 1 && !found.has(graph.steps[clause[0]!]!)) {
          found.add(graph.steps[clause[0]!]!);
          rest.push(clause[0]!);
        }
    known.set(step, found);
    return found;
  };
}
