/** What a sentence of the catalogue is filled with. */
export type SentenceFacts = Readonly<Record<string, string | number | null>>;

/** A rule of the house said no. `code` is a fact in kebab-case; the catalogue has its sentence with the next action. */
export class Refusal extends Error {
  constructor(
    readonly code: string,
    readonly facts: SentenceFacts = {},
  ) {
    super(code);
    this.name = 'Refusal';
  }
}

/** The thing asked for is not known here. `kind` is the catalogue's word for it: `bulk-bag`, `delivery`. */
export class NotFound extends Error {
  constructor(
    readonly kind: string,
    readonly asked: string,
  ) {
    super(`${kind} not found`);
    this.name = 'NotFound';
  }
}

/** One field of what came in, and the catalogue's code for what is wrong with it. */
export interface FieldProblem {
  readonly field: string;
  readonly code: string;
  readonly facts: SentenceFacts;
  /** Where it stands among the lines of a batch, counted from 1. */
  readonly line?: number;
}

/** What came in is not a form (or batch) that could be meant: each field with its reason. */
export class BadForm extends Error {
  constructor(
    readonly problems: readonly FieldProblem[],
    readonly code = 'bad-form',
    readonly facts: SentenceFacts = {},
  ) {
    super('bad form');
    this.name = 'BadForm';
  }
}

/** What came in cannot be taken as it came: it is of no type that is read here, too large, broken, or comes too fast. */
export class NotTaken extends Error {
  constructor(
    readonly why: 'wrong-type' | 'too-large' | 'bad-body' | 'busy',
    readonly code: string,
    readonly facts: SentenceFacts = {},
  ) {
    super(code);
    this.name = 'NotTaken';
  }
}

/** Who asks is not signed in, or may not do this. */
export class NotPermitted extends Error {
  constructor(
    readonly code:
      'not-signed-in' | 'not-permitted' | 'form-not-ours' | 'queue-proof-not-known' | 'queue-proof-not-for-this',
  ) {
    super(code);
    this.name = 'NotPermitted';
  }
}
