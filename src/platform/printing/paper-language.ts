import { inConversation, knownLanguage, type Language } from '../sentences/language.js';

/**
 * The language in which a paper's facts were frozen. Papers are for those who get them: no paper changes with the language of the
 * person who has it printed. Facts from before papers had a language are English.
 */
export function paperLanguageOf(facts: unknown): Language {
  return knownLanguage((facts as { readonly language?: unknown } | null)?.language) ?? 'en';
}

/** Runs what writes a paper, or freezes its facts, in the language of that paper. */
export function inPaperLanguage<Answer>(work: () => Answer, language: Language = 'en'): Answer {
  return inConversation(work, language, true);
}
