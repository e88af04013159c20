import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { formatOf } from '../plant/plant-facts.js';
import type { FormatRow } from '../plant/plant-rows.js';
import { packsIn } from '../packing/run-ranges.js';
import { addPallet, type PalletAnswer } from './add-pallet.js';
import { choosePacks, countWithPallet, refuseOverlap, sharesByLot, type ChosenPacks } from './lay-packs.js';
import { pointAtLabel } from './label-not-back.js';
import type { BuildPalletForm } from './pallet.form.js';

/**
 * Packs of one or more runs are put onto a pallet, which gets its SSCC; they are counted per lot.
 * Refusals: `range-without-packs`, `range-beyond-count`, `nothing-to-palletise`, `ranges-overlap`,
 * `packs-on-another-pallet`, `mixed-formats`, `pallet-over-full`, `lot-unknown`, `built-before-run`; those of a count.
 */
@Injectable()
export class BuildPallet {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: BuildPalletForm): Promise<PalletAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.builtAt ?? null, change.recordedAt, reason);
      const nextId = (): string => this.ids.next();
      const chosen = await choosePacks(tx, siteId, form);
      await refuseOverlap(tx, chosen);
      const format = await oneFormat(tx, chosen, form.formatId ?? null);
      refuseOverFull(format, packsIn(chosen.ranges));
      refuseBeforeRun(chosen, occurredAt);
      const shares = await sharesByLot(tx, chosen);
      await countWithPallet(tx, chosen, { builtAt: occurredAt, nextId });
      const pallet = await addPallet(tx, {
        nextId,
        siteId,
        format,
        shares,
        builtAt: occurredAt,
        placeId: form.placeId ?? null,
        label: form.label ?? true,
        recordedAt: change.recordedAt,
        personId,
      });
      if (pallet.labelPaperId !== null) await pointAtLabel(tx, { id: nextId(), siteId, pallet, at: change.recordedAt });
      return {
        answer: pallet,
        entry: {
          action: 'build-pallet',
          subject: { kind: 'pallet', id: pallet.id },
          touches: [
            ...chosen.runs.map((run) => ({ kind: 'packing-run', id: run.id })),
            ...shares.map((share) => ({ kind: 'lot', id: share.lotId })),
          ],
          after: { sscc: pallet.sscc, packCount: pallet.packCount, contents: shares.map((share) => ({ ...share })) },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

async function oneFormat(tx: Tx, chosen: ChosenPacks, meantId: string | null): Promise<FormatRow> {
  const codes = [...new Set(chosen.runs.map((run) => run.formatCode))];
  const [run] = chosen.runs;
  if (run === undefined) throw new RangeError('a pallet of no run');
  const isOther = meantId !== null && meantId !== run.formatId;
  if (codes.length > 1 || isOther) throw new Refusal('mixed-formats', { formats: codes.join(', ') });
  return formatOf(tx, run.formatId);
}

function refuseOverFull(format: FormatRow, packCount: number): void {
  if (packCount <= format.packsPerPallet) return;
  throw new Refusal('pallet-over-full', { packCount, packsPerPallet: format.packsPerPallet, format: format.code });
}

function refuseBeforeRun(chosen: ChosenPacks, builtAt: string): void {
  const later = chosen.runs.find((run) => run.startedAt > builtAt);
  if (later !== undefined) throw new Refusal('built-before-run', { run: later.number, startedAt: later.startedAt });
}
