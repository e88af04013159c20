import { Injectable } from '@nestjs/common';
import { normaliseCode, splitCodeTime } from '../core/identifiers/normalise-code.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked } from '../journal/settle-asked.js';
import { clearPoints } from '../open-points/raise-point.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { labelNotBackCause } from './label-not-back.js';
import { PalletLabelCheck } from './pallet-label-check.entity.js';
import type { CheckPalletLabelForm } from './pallet-label.form.js';
import { contentsOf, findPallet } from './pallet-list.js';
import type { PalletRow } from './pallet-rows.js';
import { palletOfLabel } from './scanned-sscc.js';

export interface LabelCheckAnswer {
  readonly id: string;
  readonly palletId: string;
  readonly sscc: string;
}

/**
 * The label that was stuck on a pallet is scanned back on it, with a pack of it where one is at hand.
 * Refusals: `label-of-another-pallet`, `pack-of-another-lot`, `pallet-taken-apart`, those of the time.
 */
@Injectable()
export class CheckPalletLabel {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, pallet: string, form: CheckPalletLabelForm): Promise<LabelCheckAnswer> {
    return this.changes.run(asked, { pallet, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const stated = { statedAt: form.checkedAt ?? null, reason: form.reason ?? null };
      const { occurredAt, statedAt, reason } = settleAsked(asked, stated, change.recordedAt);
      const meant = await findPallet(tx, siteId, pallet);
      if (meant.status === 'taken-apart') throw new Refusal('pallet-taken-apart', { pallet: meant.sscc });
      const currentYear = Number(change.recordedAt.slice(0, 4));
      const scanned = await palletOfLabel(tx, siteId, { text: form.label, currentYear });
      if (scanned.id !== meant.id) {
        throw new Refusal('label-of-another-pallet', { pallet: meant.sscc, other: scanned.sscc });
      }
      const packCode = form.packCode ?? null;
      if (packCode !== null) await refusePackOfAnotherLot(tx, meant, packCode);
      const id = this.ids.next();
      await tx.insert(PalletLabelCheck, { id, palletId: meant.id, packCode, checkedAt: occurredAt });
      const subject = { kind: 'pallet', id: meant.id };
      const nextId = (): string => this.ids.next();
      await clearPoints(tx, { nextId, siteId, cause: labelNotBackCause, subject, personId, at: change.recordedAt });
      return {
        answer: { id, palletId: meant.id, sscc: meant.sscc },
        entry: {
          action: 'check-pallet-label',
          subject,
          after: { id, sscc: meant.sscc, packCode },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

/** The pack in the hand must be of a lot on the pallet; its time of day does not count. */
async function refusePackOfAnotherLot(tx: Tx, pallet: PalletRow, packCode: string): Promise<void> {
  const lots = [...new Set((await contentsOf(tx, [pallet.id])).map((row) => row.lotCode))];
  const typed = [normaliseCode(packCode), normaliseCode(splitCodeTime(packCode).lotText)];
  if (lots.some((lot) => typed.some((code) => code === normaliseCode(lot)))) return;
  throw new Refusal('pack-of-another-lot', { pallet: pallet.sscc, lots: lots.join(', '), pack: packCode });
}
