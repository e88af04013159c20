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
const speaking = new AsyncLocalStorage<Conversation>();

interface Conversation {
  language: Language;
  /** What is said goes onto paper. */
  isOnPaper: boolean;
}

/** Runs `work`, and all that it awaits, in a conversation whose language `speak` may still change. */
export function inConversation<Answer>(work: () => Answer, language: Language = 'en', isPaper = false): Answer {
  return speaking.run({ language, isOnPaper: isPaper }, work);
}

/** From here on the conversation under way is in this language. */
export function speak(language: Language): void {
  const conversation = speaking.getStore();
  if (conversation !== undefined) conversation.language = language;
}

/** From here on the conversation under way is a page for a printer, in the language of that paper. */
export function speakOnPaper(language: Language): void {
  const conversation = speaking.getStore();
  if (conversation !== undefined) Object.assign(conversation, { language, isOnPaper: true });
}

/** Whether what is said now goes onto paper. */
export function isOnPaper(): boolean {
  return speaking.getStore()?.isOnPaper ?? false;
}

/** The language of the conversation under way. */
export function languageNow(): Language {
  return speaking.getStore()?.language ?? 'en';
}
