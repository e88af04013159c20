import { Injectable } from '@nestjs/common';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked } from '../journal/settle-asked.js';
import { raisePoint } from '../open-points/raise-point.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { formatOf } from '../plant/plant-facts.js';
import type { FormatRow } from '../plant/plant-rows.js';
import { packsIn } from '../packing/run-ranges.js';
import { addPallet, type PalletAnswer } from './add-pallet.js';
import {
  choosePacks,
  countWithPallet,
  palletBuiltLater,
  refuseOverlap,
  sharesByLot,
  type ChosenPacks,
} from './lay-packs.js';
import { pointAtLabel } from './label-not-back.js';
import { ownSetAside } from './sscc-blocks.js';
import type { BuildPalletForm } from './pallet.form.js';

/**
 * Packs of one or more runs are put onto a pallet, which gets its SSCC; they are counted per lot.
 * Refusals: `range-without-packs`, `range-beyond-count`, `nothing-to-palletise`, `ranges-overlap`,
 * `packs-on-another-pallet`, `mixed-formats`, `pallet-over-full`, `lot-unknown`, `built-before-run`,
 * `sscc-not-set-aside`, `sscc-of-another`, `sscc-used-already`; those of a count.
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
      const stated = { statedAt: form.builtAt ?? null, reason: form.reason ?? null };
      const { occurredAt, statedAt, reason, hasHappened } = settleAsked(asked, stated, change.recordedAt);
      const nextId = (): string => this.ids.next();
      const sscc = await ownSetAside(tx, asked, form.sscc ?? null);
      const chosen = await choosePacks(tx, siteId, form);
      await refuseOverlap(tx, chosen);
      const format = await oneFormat(tx, chosen, form.formatId ?? null);
      refuseOverFull(format, packsIn(chosen.ranges));
      refuseBeforeRun(chosen, occurredAt);
      const shares = await sharesByLot(tx, chosen);
      await countWithPallet(tx, chosen, { builtAt: occurredAt, hasHappened, nextId });
      const later = hasHappened ? await palletBuiltLater(tx, chosen, occurredAt) : null;
      const pallet = await addPallet(tx, {
        nextId,
        siteId,
        sscc,
        format,
        shares,
        builtAt: occurredAt,
        placeId: form.placeId ?? null,
        label: form.label ?? true,
        recordedAt: change.recordedAt,
        personId,
      });
      if (pallet.labelPaperId !== null) await pointAtLabel(tx, { id: nextId(), siteId, pallet, at: change.recordedAt });
      if (later !== null) await pointAtOrder(tx, { pallet, later, builtAt: occurredAt, siteId, nextId, change });
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

interface OutOfOrder {
  readonly pallet: PalletAnswer;
  readonly later: { readonly sscc: string; readonly builtAt: string };
  readonly builtAt: string;
  readonly siteId: string;
  readonly nextId: () => string;
  readonly change: Change;
}

/** The packs were given out in the order in which the pallets came in: somebody looks which stand on which. */
async function pointAtOrder(tx: Tx, order: OutOfOrder): Promise<void> {
  const { pallet, later, builtAt, siteId, change } = order;
  const facts = { pallet: pallet.sscc, builtAt, other: later.sscc, otherBuiltAt: later.builtAt };
  const point = {
    id: order.nextId(),
    siteId,
    cause: 'pallet-came-out-of-order',
    facts,
    at: change.recordedAt,
  } as const;
  await raisePoint(tx, { ...point, subject: { kind: 'pallet', id: pallet.id }, role: 'line-lead' });
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
