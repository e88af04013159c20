import { accountOf, type InputLine, type OutputLine } from '../core/mass-balance/account.js';
import type { CandidateMistake } from '../core/mass-balance/suspects.js';
import type { AccountLine, AccountView, SuspectView } from './account-view.js';
import { weightOfLine } from './to-line.js';

/** A mistake that may have been made, with what the record's thread is asked with. */
export interface CodedCandidate extends CandidateMistake {
  readonly code: string | null;
}

type Balance = Pick<
  AccountView,
  | 'inGrams'
  | 'outGrams'
  | 'differenceGrams'
  | 'differencePercent'
  | 'standardUncertaintyGrams'
  | 'verdict'
  | 'hasAssumed'
  | 'suspects'
>;

/** Adds an account up. Opening and closing count where a line of theirs stands; nothing else stands in for them. */
export function balanceLines(lines: readonly AccountLine[], candidates: readonly CodedCandidate[]): Balance {
  const only = (kind: AccountLine['kind']) => {
    const line = lines.find((one) => one.kind === kind);
    return line === undefined ? null : weightOfLine(line);
  };
  const account = accountOf({
    opening: only('opening'),
    inputs: lines.flatMap(inputOf),
    outputs: lines.flatMap(outputOf),
    closing: only('closing'),
    candidates,
  });
  const { inGrams, outGrams, differenceGrams, verdict, hasAssumed } = account;
  const percent = account.differencePercent;
  const uncertainty = account.standardUncertaintyGrams;
  return {
    inGrams,
    outGrams,
    differenceGrams,
    differencePercent: percent === null ? null : percent.toFixed(4),
    standardUncertaintyGrams: uncertainty === null ? null : Math.round(uncertainty),
    verdict,
    hasAssumed,
    suspects: account.suspects.map(({ mistake, recordId, grams, standardGrams, remainingGrams }): SuspectView => ({
      mistake,
      recordId,
      code: candidates.find((one) => one.mistake === mistake && one.recordId === recordId)?.code ?? null,
      grams,
      standardGrams: Math.round(standardGrams),
      remainingGrams,
    })),
  };
}

function inputOf(line: AccountLine): readonly InputLine[] {
  return line.kind === 'bag-tipped' || line.kind === 'rework' ? [{ ...weightOfLine(line), kind: line.kind }] : [];
}

function outputOf(line: AccountLine): readonly OutputLine[] {
  switch (line.kind) {
    case 'accepted-packs':
    case 'rejects':
    case 'samples':
    case 'sweepings':
    case 'weighed-back':
      return [{ ...weightOfLine(line), kind: line.kind }];
    default:
      return [];
  }
}
