import { isGln } from '../core/identifiers/gln.js';
import { isCompanyPrefix } from '../core/identifiers/sscc.js';
import { isKnownTimeZone } from '../core/shift-calendar/time-zone.js';
import { Refusal } from '../platform/refusal.js';

/** @throws {Refusal} `time-zone-unknown`, `gln-wrong`, `company-prefix-wrong`, `gln-not-of-prefix` */
export function refuseWrongNumbers(site: {
  readonly timeZone: string;
  readonly gln: string;
  readonly companyPrefix: string;
}): void {
  const { timeZone, gln, companyPrefix } = site;
  if (!isKnownTimeZone(timeZone)) throw new Refusal('time-zone-unknown', { timeZone });
  if (!isGln(gln)) throw new Refusal('gln-wrong', { gln });
  if (!isCompanyPrefix(companyPrefix)) throw new Refusal('company-prefix-wrong', { companyPrefix });
  if (!gln.startsWith(companyPrefix)) throw new Refusal('gln-not-of-prefix', { gln, companyPrefix });
}
