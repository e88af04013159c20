import { Injectable } from '@nestjs/common';
import { levelOf } from '../hopper/hopper-level.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { raisePoint } from '../open-points/raise-point.js';
import { addLooseCount } from '../packing/count-loose-packs.js';
import { openRunOfLine } from '../packing/packing-runs.js';
import { hopperOfLine, lineOf } from '../plant/plant-facts.js';
import type { NamedRow } from '../plant/plant-rows.js';
import { canonicalText, type Canonical } from '../platform/canonical-text.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, NotFound, NotPermitted, Refusal } from '../platform/refusal.js';
import { addAnswer, type IncomingLead } from './add-answer.js';
import { handoverPointsOf } from './handover-points.js';
import { Handover } from './handover.entity.js';
import type { SignHandoverForm } from './handover.form.js';
import { handoverOfShift } from './handovers.js';
import { shiftToHandOver } from './shift-to-hand-over.js';

export interface HandoverSigned {
  readonly id: string;
  readonly lineId: string;
  readonly productionOn: string;
  readonly shiftCode: string;
  /** Null: signed alone; whoever opens the line next confirms. */
  readonly incomingPersonId: string | null;
}

/** The point that a handover signed alone leaves open until somebody confirms the opening. */
export const notConfirmedCause = 'handover-not-confirmed';

/**
 * The outgoing lead hands a line over: six points as they stand, and the loose packs, are frozen. The incoming lead signs
 * with them, or confirms when opening the line.
 * Refusals: `handover-signed-already`, `line-has-no-hopper`, `second-person-same`, `more-loose-than-packed`, those of a count.
 */
@Injectable()
export class SignHandover {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  /** @param incoming the incoming lead, who has proved who they are; null: there is none */
  execute(asked: Asked, form: SignHandoverForm, incoming: IncomingLead | null): Promise<HandoverSigned> {
    return this.changes.run(asked, { ...form, incoming }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      if (personId === null) throw new NotPermitted('not-permitted');
      if (incoming?.personId === personId) throw new Refusal('second-person-same');
      const line = await lineOf(tx, form.lineId);
      if (line.siteId !== siteId) throw new NotFound('packing-line', form.lineId);
      const answer = await this.sign(tx, { asked, personId, change }, { line, form });
      if (incoming === null) await this.pointAtOpening(tx, change, { line, answer, siteId });
      else
        await addAnswer(tx, () => this.ids.next(), {
          handoverId: answer.id,
          siteId,
          line,
          incoming,
          how: 'together',
          change,
        });
      return {
        answer: { ...answer, incomingPersonId: incoming?.personId ?? null },
        entry: {
          action: 'sign-handover',
          subject: { kind: 'handover', id: answer.id },
          touches: [{ kind: 'packing-line', id: line.id }],
          after: {
            ...{ productionOn: answer.productionOn, shiftCode: answer.shiftCode },
            incomingPersonId: incoming?.personId ?? null,
            agrees: incoming?.agrees ?? null,
            loosePackCount: form.loosePackCount ?? null,
          },
        },
      };
    });
  }

  private async sign(
    tx: Tx,
    { asked, personId, change }: { readonly asked: Asked; readonly personId: string; readonly change: Change },
    { line, form }: { readonly line: NamedRow; readonly form: SignHandoverForm },
  ): Promise<Omit<HandoverSigned, 'incomingPersonId'>> {
    const { siteId } = asked.actor;
    const now = change.recordedAt;
    const shift = await shiftToHandOver(tx, { siteId, lineId: line.id, now });
    const signed = await handoverOfShift(tx, line.id, shift.startsAt);
    if (signed !== null) {
      const facts = { line: line.code, shift: shift.shiftCode, day: shift.productionOn, at: signed.signedAt };
      throw new Refusal('handover-signed-already', facts);
    }
    const hopperId = await hopperOfLine(tx, line.id, now);
    if (hopperId === null) throw new Refusal('line-has-no-hopper', { line: line.code });
    await this.countLoose(tx, { line, form, countedAt: now });
    const level = await levelOf(tx, hopperId);
    const points = await handoverPointsOf(tx, { siteId, line, hopperId, level, fromAt: shift.startsAt, now });
    const id = this.ids.next();
    const { productionOn, shiftCode, startsAt: fromAt, endsAt: untilAt } = shift;
    await tx.insert(Handover, {
      ...{ id, siteId, lineId: line.id, productionOn, shiftCode, fromAt, untilAt, outgoingPersonId: personId },
      ...{ points: canonicalText(points as unknown as Canonical), notes: form.notes ?? null, signedAt: now },
    });
    return { id, lineId: line.id, productionOn, shiftCode };
  }

  private async countLoose(
    tx: Tx,
    { line, form, countedAt }: { readonly line: NamedRow; readonly form: SignHandoverForm; readonly countedAt: string },
  ): Promise<void> {
    const run = await openRunOfLine(tx, line.id);
    if (run === null) return;
    const loosePackCount = form.loosePackCount ?? null;
    if (loosePackCount === null) throw new BadForm([{ field: 'loosePackCount', code: 'field-missing', facts: {} }]);
    const packCount = form.packCount ?? run.packCount;
    await addLooseCount(tx, () => this.ids.next(), { runId: run.id, loosePackCount, packCount, countedAt });
  }

  private async pointAtOpening(
    tx: Tx,
    change: Change,
    of: {
      readonly line: NamedRow;
      readonly answer: { readonly id: string; readonly shiftCode: string };
      readonly siteId: string;
    },
  ): Promise<void> {
    await raisePoint(tx, {
      id: this.ids.next(),
      siteId: of.siteId,
      cause: notConfirmedCause,
      facts: { line: of.line.code, shift: of.answer.shiftCode },
      subject: { kind: 'handover', id: of.answer.id },
      role: 'line-lead',
      at: change.recordedAt,
    });
  }
}
