/** What a complaint is about. The words are common practice, no source. */
export const complaintCategories = [
  'foreign-body',
  'insects',
  'illness',
  'odour-taste',
  'colour',
  'lumps',
  'short-weight',
  'damaged-pack',
  'wrong-code',
  'other',
] as const;
export type ComplaintCategory = (typeof complaintCategories)[number];

/** How grave it is, as far as it is known: what may hurt somebody, what is not as sold, what is a nuisance. */
export const complaintSeverities = ['food-safety', 'not-as-sold', 'nuisance'] as const;
export type ComplaintSeverity = (typeof complaintSeverities)[number];

/** What may be done about a complaint, one after the other. */
export const stepKinds = ['look-into', 'cause', 'action', 'answer', 'close', 'reopen'] as const;
export type StepKind = (typeof stepKinds)[number];

/** How the customer was answered; `none`: nobody could be answered, and the words say why. */
export const answerWays = ['letter', 'telephone', 'none'] as const;
export type AnswerWay = (typeof answerWays)[number];

export const complaintStatuses = ['open', 'looking-into', 'answered', 'closed', 'reopened', 'withdrawn'] as const;
export type ComplaintStatus = (typeof complaintStatuses)[number];
