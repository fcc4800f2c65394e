import { addDays, type Day, type directive, earlier } from '../engine/index.ts';
import { type Answering, answerOf, couldBecome, firstSaid, firstSentence, LONG, next, when } from './answer.ts';
import { day as dayWords, plain } from './display.ts';
import { say, t } from './frame.ts';
import type { Span } from './model.ts';
import { type Assessment, atOnce, isOpen, reading } from './standing.ts';

/** What bites first comes first, whichever directive it is from; then what the directive of the letter asks. */
export function letterAnswer(q: Answering, number: string, document: directive.DirectiveDocument | undefined): Span[] {
  const said = firstSaid(q);
  const first = said[0];
  const own = said.find((s) => s.a.directive === number);
  if (!first && q.absent?.length) return answerOf(q);
  if (!first) return [t(`On the papers that we saw, ${asksNothing(q, number, document)}`)];
  if (first === own) {
    const second = said[1];
    const spans = [...firstSentence(q, first), ...couldBecome(q, first)];
    return second && atOnce(second.a) ? [...spans, ...next(q, second)] : fitting(spans, next(q, second), []);
  }
  const opening = firstSentence(q, first);
  const papers = couldBecome(q, first);
  if (!own) return fitting(opening, papers, [t(` On the papers that we saw, ${asksNothing(q, number, document)}`)]);
  if (atOnce(own.a)) return fitting(opening, papers, [t(' '), ...firstSentence(q, own)]);
  const subject = t(` Under ${number}, ${own.name} ${own.plural ? 'fall due' : 'falls due'} `);
  const [at, ...about] = when(q, own.a);
  return fitting(opening, papers, fitting([...opening, subject, at!], about, [t('.')]).slice(opening.length));
}

/** Three lines of paper: what stands between gives way, as the page and the letter say it again below. */
const fitting = (before: readonly Span[], between: readonly Span[], after: readonly Span[]): Span[] => {
  const whole = [...before, ...between, ...after];
  return say(whole).length <= LONG ? whole : [...before, ...after];
};

/** Why the directive of the letter asks nothing: withdrawn, ended, not affected with its reason, or no such part on the aircraft. */
function asksNothing(q: Answering, number: string, document: directive.DirectiveDocument | undefined): string {
  const own = q.assessments.filter((a) => a.directive === number);
  const gone = document?.withdrawnOn;
  if (!own.length && gone !== undefined && gone <= q.day)
    return `${number} asks nothing: it was withdrawn on ${dayWords(gone)}.`;
  if (own.some((a) => a.standing.worst === 'ended')) return `all that ${number} asked of ${q.name} is ended.`;
  const why = [...new Set(own.filter((a) => !isOpen(a)).map((a) => a.affected.because))].filter(Boolean);
  if (why.length) return `${number} does not affect ${q.name}: ${why.slice(0, 2).join('; ')}.`;
  const absent = q.absent?.find((text) => text.startsWith(`${number} `));
  if (absent !== undefined) return `${absent} Treat it as due until one is seen.`;
  const looks = [...new Set((document?.actions ?? []).map((a) => plain(a.looks_at)))];
  return looks.length
    ? `${number} asks nothing of ${q.name}: no ${looks.slice(0, 2).join(' and no ')} is recorded on it.`
    : `${number} does not affect ${q.name}.`;
}

const VALID_DAYS = 180;
/** When the letter expires: today if anything is due, else by the first reading that falls due, and by a day. */
export function expiry(all: readonly Assessment[], today: Day): string {
  if (all.some(atOnce)) return 'today only';
  const days = all.flatMap((a) => [a.treatAs.dueAt.day ?? [], a.alternative?.expires ?? []].flat());
  const until = days.reduce((a, b) => earlier(a, b), addDays(today, VALID_DAYS));
  const readings = all.map((a) => a.treatAs).filter(reading);
  const [h, n] = [' h', ''].map((unit) => least(readings.filter((e) => reading(e).endsWith(' h') === (unit === ' h'))));
  const at = [n, h].filter(Boolean).join(' or ');
  return at
    ? `until the aircraft reads ${at}, and not after ${dayWords(until)}`
    : `until ${dayWords(until)}, and only while what it rests on stands`;
}
const least = (ends: readonly directive.EndOfAnswer[]): string => {
  const by = (e: directive.EndOfAnswer) => (reading(e).endsWith(' h') ? e.dueAt.total_s! : e.dueAt.landings!);
  const [first] = [...ends].sort((a, b) => by(a) - by(b));
  return first ? reading(first) : '';
};
