import { makeSscc } from '../core/identifiers/sscc.js';
import { takeNumber } from '../platform/database/number-series.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { siteOf } from '../plant/plant-facts.js';

/** Takes the next SSCC of a site. Bags and pallets share one series, since one number names one logistic unit only. */
export async function takeSscc(tx: Tx, siteId: string): Promise<string> {
  const { companyPrefix, ssccExtensionDigit } = await siteOf(tx, siteId);
  const serial = await takeNumber(tx, siteId, 'sscc');
  return makeSscc({ companyPrefix, extensionDigit: ssccExtensionDigit, serial });
}
