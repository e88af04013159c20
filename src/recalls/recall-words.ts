/** A recall of what may do harm or is not as sold, or the same done for practice. */
export const recallKinds = ['recall', 'exercise'] as const;
export type RecallKind = (typeof recallKinds)[number];

/** What a recall can be of. A shift is one of a dryer or of a packing line. */
export const recallScopeKinds = ['bulk-bag', 'lot', 'packing-run', 'dryer-shift', 'packing-shift'] as const;
export type RecallScopeKind = (typeof recallScopeKinds)[number];

/** How much of what the scope touches is recalled: all that is possible, or only what is sure and likely. */
export const recallSurenesses = ['possible', 'likely'] as const;
export type RecallSureness = (typeof recallSurenesses)[number];

/** Moments of a recall that somebody states; each comes once. */
export const recallMarks = ['customers-listed', 'stock-blocked', 'clock-stopped'] as const;
export type RecallMark = (typeof recallMarks)[number];

/** What a customer says became of what it got. */
export const recallAnswers = ['returned', 'destroyed-at-customer', 'confirmed-sold', 'nothing-yet'] as const;
export type RecallAnswerKind = (typeof recallAnswers)[number];
