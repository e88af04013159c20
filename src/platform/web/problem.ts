import type { SentenceFacts } from '../refusal.js';

/** A problem document of RFC 9457. `type` is what clients decide by. */
export interface Problem {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly facts?: SentenceFacts;
  readonly fields?: readonly ProblemField[];
}

/** What is wrong with one field; `line` where it is one of a batch. */
export interface ProblemField {
  readonly line?: number;
  readonly field: string;
  readonly type: string;
  readonly detail: string;
}
