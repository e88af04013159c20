import type { ReadFrom } from '../platform/database/reading.js';
import type { Language } from '../platform/sentences/language.js';
import { customerOf, siteOf } from './plant-facts.js';

/** The language of a paper that goes to a customer: the customer's own, else the site's. */
export async function paperLanguageFor(from: ReadFrom, customerId: string): Promise<Language> {
  const { siteId, paperLanguage } = await customerOf(from, customerId);
  return paperLanguage ?? (await siteOf(from, siteId)).paperLanguage;
}
