/**
 * How a figure is known. `seen`: its published text was read. `memory`: written down from memory, not read again.
 * `computed`: worked out from the formula that the text gives. `own-reading`: our own reading of a text that gives no
 * figure. Whoever shows a figure shows this with it, unless it was seen.
 */
export type Evidence = 'seen' | 'memory' | 'computed' | 'own-reading';

/** Where a figure stands, and how it is known. */
export interface Origin {
  /** The place in the law or standard, as it numbers itself. */
  readonly clause: string;
  readonly evidence: Evidence;
}

/** An origin in one line. */
export function from(clause: string, evidence: Evidence = 'seen'): Origin {
  return { clause, evidence };
}
