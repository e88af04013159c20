import { NotFound, Refusal, type SentenceFacts } from '../refusal.js';
import type { Language } from '../sentences/language.js';
import type { ReadFrom } from './reading.js';

/**
 * A question that is answered whole beside the server: reading and computing both. Its
 * module exports it under the name `question`, knows the sentences that it says, and asks for nothing but plain values.
 */
export interface HeavyQuestion<Asked> {
  /** The module's own `import.meta.url`. */
  readonly url: string;
  /** Answers JSON text from one unchanging view. */
  readonly answer: (from: ReadFrom, asked: Asked) => Promise<string>;
}

/** What a thread of heavy reads is asked: one statement of a snapshot, or a whole question. */
export type HeavyMessage =
  | { readonly number: number; readonly statement: string; readonly parameters: readonly unknown[] }
  | ({
      readonly number: number;
      readonly language: Language;
      readonly place: SharedArrayBuffer | null;
    } & WholeQuestion);

/** A question that is answered whole. */
export interface WholeQuestion {
  /** Of the built module that answers it. */
  readonly url: string;
  readonly asked: unknown;
  /** It gives way to what somebody waits for. */
  readonly isReport: boolean;
}

/** What the thread answers. */
export type HeavyAnswer = { readonly number: number } & (
  | { readonly rows: readonly unknown[] }
  | { readonly text: string }
  /** The text is written in the place that came with the question. */
  | { readonly byteCount: number }
  | { readonly fault: HeavyFault }
);

/** An error on its way from one thread to another. */
export type HeavyFault =
  | { readonly kind: 'error'; readonly message: string }
  | { readonly kind: 'not-found'; readonly what: string; readonly asked: string }
  | { readonly kind: 'refusal'; readonly code: string; readonly facts: SentenceFacts };

export function faultOf(error: unknown): HeavyFault {
  if (error instanceof NotFound) return { kind: 'not-found', what: error.kind, asked: error.asked };
  if (error instanceof Refusal) return { kind: 'refusal', code: error.code, facts: error.facts };
  return { kind: 'error', message: error instanceof Error ? (error.stack ?? error.message) : String(error) };
}

export function errorOf(fault: HeavyFault): Error {
  if (fault.kind === 'not-found') return new NotFound(fault.what, fault.asked);
  return fault.kind === 'refusal' ? new Refusal(fault.code, fault.facts) : new Error(fault.message);
}
