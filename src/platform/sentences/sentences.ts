import type { SentenceFacts } from '../refusal.js';
import { languageNow, type Language } from './language.js';

const catalogue = new Map<string, string>();

/**
 * Adds a room's sentences to the catalogue. A sentence is plain text with `{names}` in the place of facts. A refusal's
 * sentence says what is so and what to do next.
 *
 * @throws {RangeError} when a code is there already with another sentence
 */
export function addSentences(language: Language, sentences: Readonly<Record<string, string>>): void {
  for (const [code, text] of Object.entries(sentences)) {
    const key = `${language}:${code}`;
    const known = catalogue.get(key);
    if (known !== undefined && known !== text) throw new RangeError(`two sentences for ${key}`);
    catalogue.set(key, text);
  }
}

/** Whether the catalogue has a sentence for this code. */
export function hasSentence(code: string, language: Language = 'en'): boolean {
  return catalogue.has(`${language}:${code}`);
}

/**
 * The sentence for a code, its facts filled in, in the language of who asks. A code without a sentence is shown as the
 * code itself.
 */
export function say(code: string, facts: SentenceFacts = {}, language: Language = languageNow()): string {
  const text = catalogue.get(`${language}:${code}`) ?? catalogue.get(`en:${code}`) ?? code;
  return text.replaceAll(/\{(\w+)\}/g, (whole, name: string) => {
    const fact = facts[name];
    return fact === undefined ? whole : String(fact ?? '–');
  });
}
