import type { Evidence } from '../core/average-quantity/evidence.js';
import type { CountLine, MeanLine, RuleReason, RunLine, RunVerdict } from '../core/average-quantity/judge-run.js';
import type { SampleCountLine, SampleLine, SampleMeanLine } from '../core/average-quantity/judge-sample.js';
import { type OutsideScope, ruleSetOf } from '../core/average-quantity/rule-sets.js';
import type { RuleSet, RuleSetId } from '../core/average-quantity/rule-set.js';
import type { SampleVerdict } from '../core/average-quantity/judge-sample.js';
import { say } from '../platform/sentences/sentences.js';
import { countText, kilogramsText } from '../platform/web/figures-text.js';

/** One line of a verdict as a person reads it. */
export interface VerdictLineText {
  readonly rule: string;
  /** `kept`, `broken`, `not judged` or `second sample needed`, in words. */
  readonly verdict: string;
  /** What was found and what is allowed. */
  readonly says: string;
  /** What to know of it: that a pass proves little, what to do, how the figure is known. May be empty. */
  readonly notes: readonly string[];
  /** Where the rule stands. */
  readonly source: string;
}

/** A verdict under one rule set. */
export interface VerdictText {
  readonly title: string;
  readonly lines: readonly VerdictLineText[];
}

/** A verdict on a run as texts, one for each rule set in scope; none where `outsideText` says why. */
export function runVerdictTexts({ ruleSets }: RunVerdict): readonly VerdictText[] {
  return ruleSets.map(({ ruleSet, lines }) => ({
    title: titleOf(ruleSetOf(ruleSet)),
    lines: lines.map((line) => runLineText(line, ruleSet)),
  }));
}

/** A verdict on a batch by its sample as texts. */
export function sampleVerdictText({ lines }: SampleVerdict, ruleSet: RuleSetId): VerdictText {
  return { title: titleOf(ruleSetOf(ruleSet)), lines: lines.map((line) => sampleLineText(line, ruleSet)) };
}

/** Why no rule on averages applies. */
export function outsideText(outside: OutsideScope): string {
  const edge = outside.kind === 'above-scope' ? outside.upToMilligrams : outside.fromMilligrams;
  return say(`fill-outside-${outside.kind}`, { grams: gramsText(edge) });
}

function titleOf({ title, edition: { text } }: RuleSet): string {
  return text === null ? say('fill-edition-not-noted', { title }) : say('fill-edition', { title, edition: text });
}

/** Grams from whole milligrams: what makes kilograms of grams makes grams of milligrams. */
function gramsText(milligrams: number): string {
  return kilogramsText(milligrams);
}

/** To a hundredth of a gram in milligrams, rounded down, so that a mean that is short never reads as none. */
export function flooredMilligrams(micrograms: number): number {
  return Math.floor(micrograms / 10_000) * 10;
}

function runLineText(line: RunLine, ruleSet: RuleSetId): VerdictLineText {
  const notes = line.rule !== 'mean' && line.atMostPermille !== null ? [sharePercent(line.atMostPermille)] : [];
  return textOf(line, ruleSet, {
    rule: line.rule,
    says: line.rule === 'mean' ? runMeanSays(line) : runCountSays(line),
    notes: line.verdict === 'not-judged' ? [] : notes,
  });
}

function sampleLineText(line: SampleLine, ruleSet: RuleSetId): VerdictLineText {
  const rests = line.test === 'mean' && line.restsOnShortestPack ? [say('fill-mean-rests-on-shortest')] : [];
  return textOf(line, ruleSet, {
    rule: line.test === 'mean' ? 'mean' : line.counts,
    says:
      line.reason === 'sample-size' ? sizeSays(line) : line.test === 'mean' ? sampleMeanSays(line) : countSays(line),
    notes: rests,
  });
}

/** What all lines have in common, in the order a person asks for it. */
function textOf(
  line: { readonly verdict: string; readonly clause: string; readonly evidence: Evidence },
  ruleSet: RuleSetId,
  { rule, says, notes }: { readonly rule: string; readonly says: string; readonly notes: readonly string[] },
): VerdictLineText {
  const doNext = line.verdict === 'broken' ? [say('fill-do-broken')] : [];
  const known = line.evidence === 'seen' ? [] : [say(`fill-evidence-${line.evidence}`)];
  return {
    rule: say(`fill-rule-${rule}`),
    verdict: say(`fill-verdict-${line.verdict}`),
    says,
    notes: [...notes, ...doNext, ...known],
    source: say('fill-source', { title: ruleSetOf(ruleSet).title, clause: line.clause }),
  };
}

function sharePercent(permille: number): string {
  return say('fill-share', { percent: permille / 10 });
}

function runMeanSays({ reason, packCount, meanErrorMicrograms }: MeanLine): string {
  return meanErrorMicrograms === null ? say(`fill-${reason}`) : meanSays(reason, packCount, meanErrorMicrograms);
}

function meanSays(reason: RuleReason, packCount: number, meanErrorMicrograms: number): string {
  const milligrams = flooredMilligrams(meanErrorMicrograms);
  const facts = { packs: countText(packCount), grams: gramsText(Math.abs(milligrams)) };
  return say(reason === 'within' && milligrams === 0 ? 'fill-mean-just-within' : `fill-mean-${reason}`, facts);
}

function runCountSays(line: CountLine): string {
  const { reason, shortCount, belowMilligrams, allowedCount, packCount } = line;
  if (belowMilligrams === null || packCount === 0) return say(`fill-${reason}`);
  if (shortCount === null) return boundsSays(line, belowMilligrams);
  return countSays({ reason, shortCount, belowMilligrams, packCount, accept: allowedCount, nextPackCount: null });
}

function boundsSays(line: CountLine, belowMilligrams: number): string {
  return say(`fill-bounds-${line.verdict}`, {
    least: countText(line.leastShortCount),
    most: countText(line.mostShortCount),
    packs: countText(line.packCount),
    limit: gramsText(belowMilligrams),
    allowed: countText(line.allowedCount),
  });
}

type Counted = Pick<SampleCountLine, 'shortCount' | 'belowMilligrams' | 'packCount' | 'accept' | 'nextPackCount'> & {
  readonly reason: string;
};

function countSays({ reason, shortCount, belowMilligrams, packCount, accept, nextPackCount }: Counted): string {
  const facts = {
    count: countText(shortCount),
    packs: countText(packCount),
    limit: gramsText(belowMilligrams),
    allowed: countText(accept),
    next: nextPackCount === null ? null : countText(nextPackCount),
  };
  if (shortCount === 0) return say('fill-count-none', facts);
  return say(reason === 'outside' && accept === 0 ? 'fill-count-outside-none' : `fill-count-${reason}`, facts);
}

function sizeSays({ packCount, askedCount }: SampleLine): string {
  return say('fill-sample-size', { packs: countText(packCount), asked: countText(askedCount) });
}

function sampleMeanSays(line: SampleMeanLine): string {
  const { reason, packCount, meanErrorMicrograms, factorThousandths, standardDeviationMilligrams } = line;
  if (reason === 'between' || reason === 'sample-size' || meanErrorMicrograms === null) return sizeSays(line);
  if (factorThousandths === null) return meanSays(reason, packCount, meanErrorMicrograms);
  // Both away from the side that passes, so that the two agree with the verdict to the last digit shown.
  const allowance = Math.ceil((factorThousandths * (standardDeviationMilligrams ?? 0)) / 1000);
  return say(`fill-mean-sample-${reason}`, {
    packs: countText(packCount),
    grams: gramsText(Math.floor(meanErrorMicrograms / 1000)),
    allowance: gramsText(allowance),
  });
}
