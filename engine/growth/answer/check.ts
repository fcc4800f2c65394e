import { bounds } from '../../foundation/bounds.ts';
import { Refusal } from '../../foundation/refusal.ts';
import { readUsage } from '../../usage/index.ts';
import type { GrowthDocument } from '../document.ts';
import { crackForm } from '../stress-intensity/index.ts';
import { placed } from './placed.ts';
import { SHARES } from './rule.ts';

/** True where no stress per g with a source is at hand: then uses are compared, and no hours are given. */
export const ratiosOnly = ({ loading }: Pick<GrowthDocument, 'loading'>): boolean =>
  loading.as === 'usage' && loading.usage.place.stress.as === 'unknown';

/**
 * What the schema cannot say of a growth document.
 * @throws Refusal `growth.rule-unclear`, `growth.mix-unclear`, `growth.order-missing`, `growth.limit-stress-missing`,
 *   `growth.stress-ratio`, `growth.geometry-impossible`, `growth.outside-solution`, `foundation.bounds-reversed`, and
 *   what `readUsage` refuses
 */
export function checkGrowth(d: GrowthDocument): void {
  checkRule(d);
  const form = crackForm(d.geometry, d.factors ?? [], d.compounded ?? 'product');
  for (const size of [d.first_flaw, d.detectable]) {
    const at = placed(form, size);
    at.form.k(at.size);
  }
  checkLoading(d);
  checkFlown(d);
  if (d.limit_stress === undefined && !ratiosOnly(d))
    throw new Refusal('growth.limit-stress-missing', {
      given: 'no stress at limit load',
      allowed: 'the stress at limit load with its source, wherever hours are asked for',
      remedy: 'Add limit_stress; the critical size is told by it',
    });
}

function checkRule({ rule }: GrowthDocument): void {
  const refuse = (given: string) => {
    throw new Refusal('growth.rule-unclear', {
      given,
      allowed: '"half" or "third" alone, or "own" with the shares first and repeat',
      remedy: 'Name the rule, or give both shares of your own',
    });
  };
  const { name, first, repeat } = rule;
  if (name === 'own') {
    if (first === undefined || repeat === undefined) refuse('a rule of its own without both shares');
    return;
  }
  if ([first, repeat].some((share) => share !== undefined && share !== SHARES[name]))
    refuse(`the rule "${name}" beside other shares`);
}

function checkLoading({ loading, interaction }: GrowthDocument): void {
  const orderless = loading.as === 'spectrum' || (loading.as === 'usage' && !loading.usage.sequence);
  if (interaction.as !== 'none' && orderless)
    throw new Refusal('growth.order-missing', {
      given: `interaction by ${interaction.as} with a loading that has no order`,
      allowed: 'a sequence of cycles, one constant cycle, or a usage document that says how many flights are drawn',
      remedy:
        loading.as === 'usage'
          ? 'Add sequence to the usage document, or leave the interaction out'
          : 'Give the cycles in order, or leave the interaction out',
    });
  if (loading.as !== 'usage') return;
  readUsage(loading.usage);
  const uses = loading.mix.map((m) => m.use);
  const sum = loading.mix.reduce((t, m) => t + m.share, 0);
  const unknown = uses.find((use) => !loading.usage.uses.some((u) => u.use === use));
  const twice = uses.find((use, i) => uses.indexOf(use) !== i);
  const wrong =
    unknown !== undefined
      ? `a mix with "${unknown}", whose loads the usage document does not hold`
      : twice !== undefined
        ? `a mix that names "${twice}" twice`
        : Math.abs(sum - 1) > CLOSE
          ? `a mix whose shares add up to ${Number(sum.toPrecision(6))}`
          : null;
  if (wrong !== null)
    throw new Refusal('growth.mix-unclear', {
      given: wrong,
      allowed: `uses of the usage document, each once, with shares that add up to 1: ${loading.usage.uses.map((u) => u.use).join(', ')}`,
      remedy: 'Correct the mix of uses to come',
    });
}
const CLOSE = 1e-6;

/** Hours flown, held as those of a usage document are. */
function checkFlown({ loading, flown, flown_total }: GrowthDocument): void {
  if (loading.as === 'usage' && (flown || flown_total)) {
    readUsage({ ...loading.usage, hours: { by_use: flown ?? [], ...(flown_total ? { total: flown_total } : {}) } });
    return;
  }
  for (const h of [...(flown ?? []), ...(flown_total ? [flown_total] : [])]) bounds(h.low_h, h.high_h);
}
