import type { AnswerWay, ComplaintStatus, StepKind } from './complaint-words.js';

/** A good step, as far as the status follows from it. */
export interface StepTaken {
  readonly kind: StepKind;
  readonly way?: AnswerWay | null;
}

/** How a complaint stands after its good steps, in the order of their recording. */
export function statusAfter(steps: readonly StepTaken[]): ComplaintStatus {
  return steps.reduce<ComplaintStatus>((status, { kind }) => moved(status, kind), 'open');
}

function moved(status: ComplaintStatus, kind: StepKind): ComplaintStatus {
  switch (kind) {
    case 'look-into':
      return 'looking-into';
    case 'cause':
    case 'action':
      return status === 'open' || status === 'reopened' ? 'looking-into' : status;
    case 'answer':
      return 'answered';
    case 'close':
      return 'closed';
    case 'reopen':
      return 'reopened';
  }
}

/** Why a step can't be taken: the code of the refusal. */
export type StepFault =
  'complaint-closed' | 'complaint-not-closed' | 'complaint-without-cause' | 'complaint-not-answered';

/**
 * Whether a step may follow on these. A closed complaint is reopened first; only a closed one can be. It is closed
 * when a cause was recorded (also that none was found) and the customer was answered (or nobody could be), since it
 * was last reopened.
 */
export function faultOf(steps: readonly StepTaken[], kind: StepKind): StepFault | null {
  const isClosed = statusAfter(steps) === 'closed';
  if (kind === 'reopen') return isClosed ? null : 'complaint-not-closed';
  if (isClosed) return 'complaint-closed';
  if (kind !== 'close') return null;
  const sinceReopened = steps.slice(steps.findLastIndex((step) => step.kind === 'reopen') + 1);
  if (!steps.some((step) => step.kind === 'cause')) return 'complaint-without-cause';
  return sinceReopened.some((step) => step.kind === 'answer') ? null : 'complaint-not-answered';
}
