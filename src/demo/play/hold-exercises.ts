import { contentsOf } from '../../pallets/pallet-list.js';
import { groupBy } from '../../platform/group-by.js';
import { AnswerRecall } from '../../recalls/answer-recall.js';
import { MarkRecall } from '../../recalls/mark-recall.js';
import { OpenRecall } from '../../recalls/open-recall.js';
import { figuresOfRecall } from '../../recalls/recall-figures.js';
import type { RecallMark } from '../../recalls/recall-words.js';
import { findRecall } from '../../recalls/recalls.js';
import { isOdd, SignRecall } from '../../recalls/sign-recall.js';
import type { DemoHand } from '../set-up/demo-hand.js';
import type { LastStep } from './last-hour.js';

/**
 * Two invented exercises in the last hour of the demo: one of a lot that customers got, answered, stopped and signed; one of
 * a bag, whose clock runs on. A demo that nothing has left yet has none.
 */
export class DemoExercises {
  readonly steps: readonly LastStep[] = [
    { minutesBefore: 52, act: () => this.openOfLot() },
    { minutesBefore: 46, act: () => this.mark('customers-listed') },
    { minutesBefore: 43, act: () => this.mark('stock-blocked') },
    { minutesBefore: 33, act: () => this.answers() },
    { minutesBefore: 29, act: () => this.mark('clock-stopped') },
    { minutesBefore: 24, act: () => this.sign() },
    { minutesBefore: 14, act: () => this.openOfBag() },
    { minutesBefore: 9, act: () => this.mark('customers-listed') },
  ];

  private recallId: string | null = null;

  constructor(private readonly hand: DemoHand) {}

  /** The lot that is split the most evenly between customers and the store: both have something to be found. */
  private async openOfLot(): Promise<void> {
    const { hand } = this;
    const gone = await hand.reader.sql<{ id: string; status: string }>`
      SELECT "pallet_id" AS "id", "status" FROM "pallet_state" WHERE "status" IN ('dispatched', 'in-store')
      ORDER BY "pallet_id"`;
    const statusOf = new Map(gone.map(({ id, status }) => [id, status]));
    const lots = groupBy(await contentsOf(hand.reader, [...statusOf.keys()]), ({ lotId }) => lotId);
    const split = [...lots].map(([lotId, rows]) => {
      const goneCount = rows.filter(({ palletId }) => statusOf.get(palletId) === 'dispatched').length;
      return { lotId, goneCount, evenCount: Math.min(goneCount, rows.length - goneCount) };
    });
    const [most] = split
      .filter(({ goneCount }) => goneCount > 0)
      .sort((one, other) => other.evenCount - one.evenCount || other.goneCount - one.goneCount);
    if (most === undefined) return;
    await this.open('lot', most.lotId, 'Yearly exercise: a pack from a shop is followed to every customer (invented)');
  }

  /** The bag that was tipped first: it had the longest way to go. */
  private async openOfBag(): Promise<void> {
    if (this.recallId === null) return;
    const [first] = await this.hand.reader.sql<{ bagId: string }>`
      SELECT "bag_id" AS "bagId" FROM "tip" WHERE "bag_id" IS NOT NULL AND "voided_by" IS NULL
      ORDER BY "opened_at", "id" LIMIT 1`;
    if (first === undefined) return;
    await this.open('bulk-bag', first.bagId, 'Exercise: what if one bag were bad? (invented)');
  }

  private async open(scopeKind: 'lot' | 'bulk-bag', scopeId: string, reason: string): Promise<void> {
    const scopes = [{ scopeKind, scopeId }];
    const form = { kind: 'exercise', hazard: 'safety', reason, scopes } as const;
    this.recallId = (await this.hand.give(OpenRecall).execute(this.hand.asked('quality'), { ...form, scopes })).id;
  }

  private async mark(mark: RecallMark): Promise<void> {
    if (this.recallId === null) return;
    await this.hand.give(MarkRecall).execute(this.hand.asked('quality'), this.recallId, { mark });
  }

  /** A customer sends a tenth back and has sold the rest; the others have sold all of it. */
  private async answers(): Promise<void> {
    if (this.recallId === null) return;
    const { hand, recallId } = this;
    const answer = hand.give(AnswerRecall);
    const { customers } = await this.figures(recallId);
    for (const [place, { customerId, packCount }] of customers.entries()) {
      const back = place === 0 ? Math.floor(packCount / 10) : 0;
      const remarks = `Answer by telephone, slip ${place + 1} (invented)`;
      if (back > 0) {
        const returned = { customerId, answer: 'returned', packCount: back, remarks } as const;
        await answer.execute(hand.asked('quality'), recallId, returned);
      }
      if (packCount === back) continue;
      const sold = { customerId, answer: 'confirmed-sold', packCount: packCount - back, remarks } as const;
      await answer.execute(hand.asked('quality'), recallId, sold);
    }
  }

  private async sign(): Promise<void> {
    if (this.recallId === null) return;
    const words = 'Packs that were counted at the line and stand on no pallet (invented)';
    const explanation = isOdd(await this.figures(this.recallId)) ? words : null;
    await this.hand.give(SignRecall).execute(this.hand.asked('quality'), this.recallId, { explanation });
  }

  private async figures(recallId: string) {
    const { reader, plant } = this.hand;
    return figuresOfRecall(reader, await findRecall(reader, plant.siteId, recallId));
  }
}
