import { Injectable } from '@nestjs/common';
import { findBag, type BagRow } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseStalePage } from '../journal/stale-page.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import type { DecideOnBagsForm } from './decision.form.js';
import { recordDecision, refuseOnePerson, type Deciding } from './record-decision.js';
import { refuseForBag, refuseOutOfOrder } from './refuse-decision.js';
import { decisionOn, type Verdict } from './standings.js';

export interface BagsDecidedOn {
  readonly verdict: Verdict;
  readonly decidedAt: string;
  readonly bags: readonly { readonly id: string; readonly number: string; readonly decisionId: string }[];
}

/**
 * Quality decides on several bags at once, such as those of a dryer shift: on all, or (where one refuses) on none.
 * Each bag has its decision as if it had been decided on alone; the journal has one entry that touches all
 * (`docs/decisions/0013-one-decision-on-several-bags.md`).
 * Refusals: `page-is-stale`, `decision-needs-reason`, `second-person-needed`, `second-person-same`,
 * `later-decision-stands`, `bag-not-closed`, `results-outside`, `results-missing`; not found: bulk-bag, person.
 */
@Injectable()
export class DecideOnBags {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: DecideOnBagsForm): Promise<BagsDecidedOn> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { verdict, reason = null, secondPersonId = null } = form;
      const deciding = { asked, change, nextId: () => this.ids.next() };
      await refuseOnePerson(tx, deciding, { verdict, secondPersonId });
      const decided: { id: string; number: string; decisionId: string; before: Verdict }[] = [];
      for (const bagId of [...new Set(form.bagIds)].sort()) {
        const bag = await this.bagToDecideOn(tx, asked, { bagId, seenSequence: form.seenSequence ?? null });
        decided.push(await decideOnOne(tx, deciding, { bag, verdict, reason, secondPersonId }));
      }
      const [first] = decided;
      if (first === undefined) throw new RangeError('a list of bags without a bag');
      return {
        answer: {
          verdict,
          decidedAt: change.recordedAt,
          bags: decided.map(({ id, number, decisionId }) => ({ id, number, decisionId })),
        },
        entry: {
          action: 'decide-on-bags',
          subject: { kind: 'bulk-bag', id: first.id },
          touches: decided.map(({ id }) => ({ kind: 'bulk-bag', id })),
          before: decided.map(({ id: bagId, before }) => ({ bagId, verdict: before })),
          after: {
            verdict,
            decisions: decided.map(({ id: bagId, decisionId }) => ({ bagId, id: decisionId })),
            ...(secondPersonId === null ? {} : { secondPersonId }),
          },
          reason,
        },
      };
    });
  }

  /** The page knew one sequence for all of the bags. */
  private async bagToDecideOn(
    tx: Tx,
    asked: Asked,
    chosen: { readonly bagId: string; readonly seenSequence: number | null },
  ): Promise<BagRow> {
    const bag = await findBag(tx, asked.actor.siteId, chosen.bagId);
    const subject = { kind: 'bulk-bag', id: bag.id };
    if (chosen.seenSequence !== null) await refuseStalePage(tx, { subject, sequence: chosen.seenSequence });
    return bag;
  }
}

async function decideOnOne(
  tx: Tx,
  deciding: Deciding,
  given: {
    readonly bag: BagRow;
    readonly verdict: Verdict;
    readonly reason: string | null;
    readonly secondPersonId: string | null;
  },
): Promise<{ id: string; number: string; decisionId: string; before: Verdict }> {
  const { bag, verdict, reason, secondPersonId } = given;
  const decidedAt = deciding.change.recordedAt;
  await refuseForBag(tx, bag, verdict);
  const before = await decisionOn(tx, 'bulk-bag', bag.id);
  refuseOutOfOrder(before, { label: bag.number, verdict, reason, decidedAt });
  const draft = { kind: 'bulk-bag', subjectId: bag.id, bag, verdict, reason, decidedAt, secondPersonId } as const;
  return {
    id: bag.id,
    number: bag.number,
    decisionId: await recordDecision(tx, deciding, draft),
    before: before.verdict,
  };
}
