import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { SampleRow } from './samples.js';

/** What a sample stands for, in a few words. */
export function coverText(sample: SampleRow, timeZone: string): string {
  if (sample.bagNumber !== null) return say('sample-of-bag', { bag: sample.bagNumber });
  const [from, until] = [sample.fromAt, sample.untilAt].map((at) => (at === null ? null : localText(at, timeZone)));
  return say(`sample-of-${sample.standsFor}`, { dryer: sample.dryerCode, from: from ?? null, until: until ?? null });
}

/** A property by its name in the catalogue, or as it was given. */
export function propertyText(property: string): string {
  const code = `property-${property}`;
  const name = say(code);
  return name === code ? property : name;
}
