import { inConversation, type Language } from '../sentences/language.js';

/** Papers are for those who get them: no paper changes with the language of the person who has it printed. */
const paperLanguage: Language = 'en';

/** Runs what writes a paper, or freezes its facts, in the language of papers. */
export function inPaperLanguage<Answer>(work: () => Answer): Answer {
  return inConversation(work, paperLanguage);
}
