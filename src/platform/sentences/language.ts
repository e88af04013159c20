import { AsyncLocalStorage } from 'node:async_hooks';

/** The languages that the catalogue speaks, each complete. */
export const languages = ['en', 'es'] as const;
export type Language = (typeof languages)[number];

/** A language that the catalogue speaks, or null. */
export function knownLanguage(text: unknown): Language | null {
  return languages.find((language) => language === text) ?? null;
}

/**
 * Whom the house is speaking to. Every text of a page is said in the language of the person who asks; jobs and papers
 * speak English unless they say otherwise.
 */
const speaking = new AsyncLocalStorage<{ language: Language }>();

/** Runs `work`, and all that it awaits, in a conversation whose language `speak` may still change. */
export function inConversation<Answer>(work: () => Answer, language: Language = 'en'): Answer {
  return speaking.run({ language }, work);
}

/** From here on the conversation under way is in this language. */
export function speak(language: Language): void {
  const conversation = speaking.getStore();
  if (conversation !== undefined) conversation.language = language;
}

/** The language of the conversation under way. */
export function languageNow(): Language {
  return speaking.getStore()?.language ?? 'en';
}
