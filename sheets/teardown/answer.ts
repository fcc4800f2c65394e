import type { teardown } from '../../engine/index.ts';
import { capital, count, day as dayWords, money, number, range } from '../display.ts';
import { f, t } from '../frame.ts';
import type { Span } from '../model.ts';
import { handsOf, nextOf, takenOf, targetWords } from './facts.ts';
import type { TeardownSheetInput } from './input.ts';
import { aboutSum, hoursRange, listed } from './words.ts';

type Answer = teardown.TeardownAnswer;

/** One sentence for the telephone: what comes off, how many hours, how much money, when it is finished. */
export function teardownSentence({ document: d, answer }: TeardownSheetInput): Span[] {
  const a = answer.value;
  const { off, open, fasteners } = takenOf(d.map, a.plan.operations);
  const what = [
    ...(off.length ? [`${count(off.length, 'part')} ${off.length === 1 ? 'comes' : 'come'} off`] : []),
    ...(open.length ? [`${count(fasteners, 'fastener')} ${fasteners === 1 ? 'comes' : 'come'} out`] : []),
  ];
  return [
    t(`To ${targetWords(d)}, `),
    ...(what.length
      ? what.flatMap((words, i) => [...(i ? [t(' and ')] : []), f(words)])
      : [f('nothing has to come off')]),
    t(': '),
    ...workSpans(d, a),
    ...endSpans(a),
    t('.'),
  ];
}
function workSpans(d: teardown.TeardownDocument, a: Answer): Span[] {
  const hours = a.quote?.hours ?? handsOf(a.plan.operations);
  return [
    f(hoursRange(hours, 0)),
    ...(a.quote ? [t(', about '), f(aboutSum(a.quote.range, a.quote.currency))] : []),
    ...(a.quote || d.floor ? [] : [t(' of work')]),
  ];
}
/** When it is finished: with the waiting for a part on order, where that outruns the work. */
function endSpans(a: Answer): Span[] {
  if (!a.schedule) return [];
  const { finish, ends } = a.schedule;
  const { quote } = a;
  if (quote?.outrun && quote.finish)
    return [
      t(', finished between about '),
      f(dayWords(quote.finish.early)),
      t(' and '),
      f(dayWords(quote.finish.late)),
      t(`, for the part on order takes ${range(quote.outrun.lead_days)} days to come`),
    ];
  if (finish)
    return [t(', finished about '), f(dayWords(finish.p50)), t(' (P50), '), f(dayWords(finish.p80)), t(' (P80)')];
  const end = ends[0];
  return end ? [t(', at the likely times finished '), f(dayWords(end.day))] : [];
}

/** One line of why: how sure it is that nothing less would do, what comes along, what is next. */
export function teardownBecause({ document: d, answer }: TeardownSheetInput): string {
  const { plan } = answer.value;
  const done = plan.operations.filter((o) => o.done).length;
  const next = nextOf(plan.operations);
  const progress =
    done === 0
      ? ''
      : next
        ? `${capital(count(done, 'step'))} of ${number(plan.operations.length)} done; next: ${next.title}.`
        : `All ${count(plan.operations.length, 'step')} are done.`;
  return [proofWords(d, plan.least), extrasWords(plan.extras), aloneWords(answer.value), progress]
    .filter(Boolean)
    .join(' ');
}
/** Where a part on order outruns the work: when the work alone would be done. */
function aloneWords({ schedule, quote }: Answer): string {
  const finish = schedule?.finish;
  return finish && quote?.outrun && quote.finish
    ? `Without the waiting for the part the work would end ${dayWords(finish.p50)} (P50), ${dayWords(finish.p80)} (P80).`
    : '';
}
/** Money where a floor says what an hour costs; else minutes of work. */
const worth = (d: teardown.TeardownDocument, cents: number): string =>
  d.floor ? `${money(Math.round(cents))} ${d.floor.currency}` : `${number(cents / 60, 1)} h of work`;
export function proofWords(d: teardown.TeardownDocument, least: teardown.LeastTeardown): string {
  const left = d.recorded.some((r) => r.what === 'done') ? 'Of what is left, proven' : 'Proven';
  return least.proven
    ? `${left}: nothing that reaches it costs less than ${worth(d, least.cost_cents)}, there and back.`
    : `The least that was found costs ${worth(d, least.cost_cents)}, there and back; the proof was not finished, and none costs less than ${worth(d, least.bound_cents)}.`;
}
function extrasWords(extras: readonly teardown.Extra[]): string {
  const chosen = extras.filter((e) => e.chosen);
  const [looks, jobs] = [chosen.filter((e) => e.is === 'look').length, chosen.filter((e) => e.is === 'job').length];
  const words = [...(looks ? [count(looks, 'look')] : []), ...(jobs ? [count(jobs, 'small job')] : [])];
  if (!words.length) return '';
  return `${capital(listed(words))} ${chosen.length === 1 ? 'comes' : 'come'} along while it is open.`;
}
