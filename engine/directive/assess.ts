import type { Day } from '../foundation/day.ts';
import { isRefusal, Refusal } from '../foundation/refusal.ts';
import type { Life, RecordModel } from '../record/index.ts';
import { affected, groupsOf, type Verdict } from './affected.ts';
import { runCases } from './cases.ts';
import type { DirectiveDocument, Standing } from './document.ts';
import { endedBy } from './ended.ts';
import { doneUnder, startedBy } from './history.ts';
import { type Judged, judge, treeInForce } from './judge.ts';
import { alternativeOf, candidateOf, type Setting, situationOf } from './life-situation.ts';
import { scaled } from './limit.ts';
import { assumeUse, gapsBehind } from './missing.ts';
import { mixOf } from './mix.ts';
import type { Assessment, EndOfAnswer, Mix } from './model.ts';
import { NO_CLOCK, notStarted } from './not-affected.ts';
import { papersWanted } from './papers.ts';
import { doubtsOf, readingsOf } from './sides.ts';
import type { Situation } from './situation.ts';
import { badness, worseOf } from './standing.ts';
import { plain } from './words.ts';
import { workingOf } from './working.ts';
import { worseSide } from './worse-side.ts';

const bare = (standing: Standing, now = false): EndOfAnswer => ({
  standing,
  dueAt: { total_s: null, landings: null, day: null, now },
  left: null,
  counted: null,
  witness: [],
  proven: 'exact',
});

const failing = new WeakMap<DirectiveDocument, string | null>();
/** Why a directive may not compute, or null: its own test cases, run once per document. */
function casesFail(d: DirectiveDocument): string | null {
  if (!failing.has(d)) {
    const bad = runCases(d).find((c) => !c.passes);
    failing.set(d, bad ? `treat as due, not computed: its own test case "${bad.name}" ${bad.because}` : null);
  }
  return failing.get(d)!;
}

/**
 * Where one part stands under one action on a day.
 *
 * "Treat as" is the worst standing over all histories the papers allow, "could become" the best. Nothing that
 * refuses drops out: it is then `treat as due, not computed`.
 *
 * @throws Refusal `directive.action-unknown`
 */
export function assess(
  directive: DirectiveDocument,
  actionId: string,
  life: Life,
  model: RecordModel,
  asked: { day: Day; mix?: Mix },
): Assessment {
  const action = directive.actions.find((a) => a.id === actionId);
  if (!action)
    throw new Refusal('directive.action-unknown', {
      given: `action "${actionId}" of ${directive.number}`,
      allowed: directive.actions.map((a) => a.id).join(', '),
      remedy: 'Name one of its actions',
    });
  const mix = asked.mix ?? mixOf(life);
  const read = (record: RecordModel) => answered({ directive, action, life, model: record, day: asked.day, mix });
  const [proven, alleged] = readingsOf(directive, model);
  if (!alleged) return read(proven!);
  const doubts = doubtsOf(model);
  const own = model.entries.find(
    (e) =>
      e.kind === 'accomplished' && e.subject === life.subject.id && e.body.action === action.id && doubts.has(e.id),
  );
  const { hand, what } = life.subject;
  const part = `the ${hand === 'none' ? '' : `${hand} `}${plain(what)}`;
  const words = own && `Work of ${own.day} on ${part} is not proven: ${doubts.get(own.id)!.because}.`;
  return worseSide(read(proven!), read(alleged), words ?? null);
}

function answered(at: Setting): Assessment {
  const failed = casesFail(at.directive);
  try {
    return failed ? notComputed(at, failed) : computed(at);
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return notComputed(at, `treat as due, not computed: ${e.message}`);
  }
}

function frame(at: Setting, verdict: Verdict, ends: { worst: EndOfAnswer; best: EndOfAnswer }): Assessment {
  const { directive: d, action, life, model } = at;
  const last = doneUnder(d, action, model, life.subject.id).findLast((e) => e.day <= at.day);
  const alternative = alternativeOf(at);
  return {
    directive: d.number,
    issue: d.issue,
    action,
    subject: life.subject.id,
    day: at.day,
    affected: { yes: verdict.answer !== 'no', because: verdict.because },
    standing: { worst: ends.worst.standing, best: ends.best.standing },
    treatAs: ends.worst,
    couldBecome: ends.best,
    counted: null,
    mix: at.mix,
    lastDone: last
      ? {
          day: last.day,
          entry: last.id,
          finding: last.body.finding,
          by: last.body.signer?.name ?? 'no signer on paper',
        }
      : null,
    papers: [],
    alternative: alternative
      ? {
          reference: alternative.body.reference,
          conditions: alternative.body.conditions,
          entry: alternative.id,
          expires: (alternative.body.expires as Day | undefined) ?? null,
        }
      : null,
    soon_days: life.policy.soon_days,
    ferry: action.ferry ?? 'not stated',
    working: [],
    warnings: [...warningsOf(at), ...fittingWarnings(at)],
    notComputed: null,
  };
}

const notComputed = (at: Setting, because: string): Assessment => ({
  ...frame(at, { answer: 'perhaps', because: 'not computed' }, { worst: bare('due', true), best: bare('due', true) }),
  notComputed: because,
});

function computed(at: Setting): Assessment {
  const s = situationOf(at);
  const verdict = affected(groupsOf(at.directive, at.action.affects), candidateOf(at, s));
  const settled = (standing: Standing, because = verdict.because): Assessment => {
    const a = frame(at, { ...verdict, because }, { worst: bare(standing), best: bare(standing) });
    return { ...a, affected: { yes: standing !== 'not affected', because } };
  };
  if (verdict.answer === 'no') return settled('not affected');
  const cause = startedBy(at.directive, at.action, at.model, at.life.subject.id);
  if (at.action.started_by?.length && !cause) return settled('not affected', notStarted(at.action.started_by));
  const ended = endedBy(at, s);
  if (ended) {
    const a = settled('ended', ended.because);
    return { ...a, affected: { yes: true, because: verdict.because }, working: [workingOf.ended(ended, at)] };
  }
  const warnings: string[] = [];
  const tree = treeInForce(s, (w) => warnings.push(w));
  if (!tree) return settled('not affected', NO_CLOCK);
  return limited(at, s, tree, verdict, warnings);
}

function limited(
  at: Setting,
  s: Situation,
  tree: NonNullable<ReturnType<typeof treeInForce>>,
  verdict: Verdict,
  warnings: string[],
): Assessment {
  const j = judge(s, tree);
  const papers = at.action.missing_papers;
  const open =
    Math.abs((j.worst.left?.value ?? 0) - (j.best.left?.value ?? 0)) > 1e-6 || j.worst.standing !== j.best.standing;
  const touched = gapsBehind(at.life, s, scaled(tree));
  const gaps = open ? touched : [];
  let worst = j.worst;
  if (typeof papers === 'object' && at.life.gaps.length) {
    // The formula may count a use that the record does not know: no figure of its is open, and the gap counts all the same.
    const assumed = judge(s, tree, assumeUse(at.life, papers.assume_use));
    const worse = nearer(assumed, j);
    if (worse) worst = assumed.worst;
    if (worse || touched.length)
      warnings.push(`Where no paper says the use, the directive has it counted as ${plain(papers.assume_use)}.`);
  }
  if (papers === 'act_now' && gaps.length) {
    warnings.push(
      `A paper is missing that this limit depends on (${gaps.map((g) => `${g.from} to ${g.to}`).join(', ')}): the directive says act now.`,
    );
    worst = { ...worst, standing: worseOf('due', worst.standing), dueAt: { ...worst.dueAt, now: true } };
  }
  const best = verdict.answer === 'perhaps' ? bare('not affected') : j.best;
  const base = frame(at, verdict, { worst, best });
  const counts = at.action.counts;
  return {
    ...base,
    counted: j.counted && counts ? { ...j.counted, called: counts.called, unit: counts.unit } : null,
    papers: gaps.length ? papersWanted(s, tree, j, gaps) : [],
    working: workingOf.limits(at, s, j),
    warnings: [...base.warnings, ...warnings],
  };
}

/** Which of two worst ends is worse: by standing, then by what is left on the shop's yardstick, whatever its unit. */
function nearer(a: Judged, b: Judged): boolean {
  const step = badness(a.worst.standing) - badness(b.worst.standing);
  return step > 0 || (step === 0 && a.held.worst[0]!.scaled < b.held.worst[0]!.scaled);
}

function warningsOf(at: Setting): string[] {
  const out: string[] = [];
  const { life, directive: d } = at;
  if (life.stale) out.push('The last reading is old: every figure is as of that reading.');
  if (at.day < d.effective) out.push(`Not yet effective: it is in force from ${d.effective}.`);
  if (d.extract) out.push(`Only part of the official text was read: ${d.extract}`);
  if (d.known === 'memory' || d.known === 'second-hand')
    out.push(`Its text is known ${d.known === 'memory' ? 'from memory' : 'second-hand'} only.`);
  return out;
}

/** Parts that may no longer be fitted: the fitted one after the effective date, and the spare on the shelf. */
function fittingWarnings(at: Setting): string[] {
  const banned = at.action.forbids_fitting ?? [];
  const own = at.life.subject.attributes.part_number?.value;
  if (own === undefined || !banned.includes(own) || at.day < at.directive.effective) return [];
  if (at.life.subject.aircraft === null && at.life.subject.kind === 'part')
    return [`Part number ${own} may no longer be fitted: keep this spare on the shelf.`];
  const fitted = at.model.entries.find(
    (e) => e.kind === 'fitment' && e.subject === at.life.subject.id && e.day > at.directive.effective,
  );
  return fitted ? [`Part number ${own} was fitted on ${fitted.day}, after the directive forbade it.`] : [];
}
