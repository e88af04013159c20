import { say } from '../platform/sentences/sentences.js';
import type { Finding, Fit } from './finding.js';

/** Why a thing fits, in one line. Empty where nothing has to be said. */
export function fitsText(fits: readonly Fit[]): string {
  return fits.map(({ code, facts }) => say(code, facts)).join(' · ');
}

/** What a finding is called where it is chosen from several. */
export function findingText({ subject }: Pick<Finding, 'subject'>): string {
  return say(`thread-title-${subject.kind}`, { name: subject.name, at: subject.localTime ?? '' }).trim();
}
