import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { issuePaper } from '../platform/printing/issue-paper.js';
import { printedTime } from '../platform/printing/printed-figures.js';
import { siteOf } from '../plant/plant-facts.js';
import { bestBeforeOfLot } from '../packing/lot-dates.js';
import { packsIn } from '../packing/run-ranges.js';
import { contentsOf, palletOf } from './pallet-list.js';
import { palletLabelEdition, palletLabelKind, type PalletLabelFacts } from './pallet.label.js';
import { computedGrossGrams, declaredNetGrams } from './pallet-rows.js';

/** Who asks for a label, and when. */
interface LabelDraft {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly recordedAt: Instant;
  readonly personId: string | null;
}

/** Freezes what stands on a pallet's label and leaves the PDF to a job. Answers the paper's id. */
export async function issuePalletLabel(tx: Tx, draft: LabelDraft, palletId: string): Promise<string> {
  const id = draft.nextId();
  await issuePaper(tx, {
    id,
    jobId: draft.nextId(),
    siteId: draft.siteId,
    kind: palletLabelKind,
    edition: palletLabelEdition,
    number: null,
    subject: { kind: 'pallet', id: palletId },
    facts: { ...(await labelFacts(tx, palletId)) },
    issuedAt: draft.recordedAt,
    personId: draft.personId,
  });
  return id;
}

async function labelFacts(tx: Tx, palletId: string): Promise<PalletLabelFacts> {
  const pallet = await palletOf(tx, palletId);
  const site = await siteOf(tx, pallet.siteId);
  const language = site.paperLanguage;
  const contents = await contentsOf(tx, [palletId]);
  const lotIds = [...new Set(contents.map((row) => row.lotId))];
  const lots = [];
  for (const lotId of lotIds) {
    const rows = contents.filter((row) => row.lotId === lotId);
    lots.push({
      code: rows[0]?.lotCode ?? '',
      packCount: packsIn(rows),
      bestBeforeOn: await bestBeforeOfLot(tx, lotId),
    });
  }
  return {
    language,
    siteName: site.name,
    siteGln: site.gln,
    sscc: pallet.sscc,
    gtin: pallet.gtin,
    productName: pallet.formatName,
    packCount: pallet.packCount,
    isFull: pallet.isFull,
    netGrams: declaredNetGrams(pallet, pallet.packCount),
    grossGrams: computedGrossGrams(pallet),
    builtAtLocal: printedTime(pallet.builtAt, site.timeZone, language),
    builtOn: pallet.builtAt.slice(0, 10),
    lots,
  };
}
