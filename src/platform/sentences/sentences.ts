import type { SentenceFacts } from '../refusal.js';
import { languageNow, type Language } from './language.js';

const catalogue = new Map<string, string>();

/** `{name?one|many}` in a sentence. */
const countForms = /\{(\w+)\?([^{}|]*)\|([^{}|]*)\}/g;

/**
 * Adds a room's sentences to the catalogue. A sentence is plain text with `{names}` in the place of facts; a fact that
 * is a word of the house is said in the words of its family: `{status:bag-status}` says `bag-status-full` for `full`.
 * What is said of a count stands as for one and as for any other: `{count} {count?bag waits|bags wait}` (decision 0033).
 * A refusal's sentence says what is so and what to do next.
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

/** All sentences of a language, by their codes. */
export function sentencesOf(language: Language): ReadonlyMap<string, string> {
  const start = `${language}:`;
  const own = [...catalogue].filter(([key]) => key.startsWith(start));
  return new Map(own.map(([key, text]) => [key.slice(start.length), text]));
}

/** Whether the catalogue has a sentence for this code. */
export function hasSentence(code: string, language: Language = 'en'): boolean {
  return catalogue.has(`${language}:${code}`);
}

/**
 * The sentence for a code, its facts filled in, in the language of who asks. A code without a sentence is shown as the
 * code itself. `{=name}` says the sentence whose code that fact is, filled with the same facts.
 */
export function say(code: string, facts: SentenceFacts = {}, language: Language = languageNow()): string {
  const text = catalogue.get(`${language}:${code}`) ?? catalogue.get(`en:${code}`) ?? code;
  return agreed(text, facts).replaceAll(
    /\{(=?)(\w+)(?::([a-z-]+))?\}/g,
    (whole, said: string, name: string, family?: string) => {
      const fact = facts[name];
      if (fact === undefined) return whole;
      if (fact === null) return '–';
      if (said !== '') return say(String(fact), facts, language);
      return family === undefined ? String(fact) : wordsFor(String(fact), { family, facts, language });
    },
  );
}

/** The sentence as it is said of its counts. */
function agreed(text: string, facts: SentenceFacts): string {
  return text.replaceAll(countForms, (_, name: string, one: string, many: string) =>
    String(facts[name]) === '1' ? one : many,
  );
}

/** Words of the house among facts, such as `opened` of `{status:bag-status}`; what the catalogue does not know stays. */
function wordsFor(
  fact: string,
  { family, ...asked }: { readonly family: string; readonly facts: SentenceFacts; readonly language: Language },
): string {
  return fact
    .split(', ')
    .map((word) => (hasSentence(`${family}-${word}`) ? say(`${family}-${word}`, asked.facts, asked.language) : word))
    .join(', ');
}
