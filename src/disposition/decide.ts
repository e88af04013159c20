import { Injectable } from '@nestjs/common';
import { findBag, type BagRow } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { DecisionSubjects } from './decision-subjects.js';
import type { DecideForm } from './decision.form.js';
import { recordDecision, refuseOnePerson } from './record-decision.js';
import { refuseForBag, refuseForUnit, refuseOutOfOrder } from './refuse-decision.js';
import { decisionOn, type Verdict } from './standings.js';

export interface DecisionAnswer {
  readonly id: string;
  readonly kind: 'bulk-bag' | 'lot' | 'pallet';
  readonly subjectId: string;
  readonly verdict: Verdict;
  readonly decidedAt: string;
}

/**
 * Quality decides on a bag, a lot or a pallet. Holds are another matter: they stop what is released too.
 * Refusals: `decision-needs-reason`, `second-person-needed`, `second-person-same`, `later-decision-stands`,
 * `bag-not-closed`, `results-outside`, `results-missing`, `subject-on-hold`; not found: bulk-bag, lot, pallet, person.
 */
@Injectable()
export class Decide {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    private readonly subjects: DecisionSubjects,
  ) {}

  execute(asked: Asked, form: DecideForm): Promise<DecisionAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.decidedAt ?? null, change.recordedAt, reason);
      const { kind, verdict, secondPersonId = null } = form;
      const deciding = { asked, change, nextId: () => this.ids.next() };
      const subject = await this.subjectOf(tx, asked.actor.siteId, form);
      const before = await decisionOn(tx, kind, subject.id);
      refuseOutOfOrder(before, { label: subject.label, verdict, reason, decidedAt: occurredAt });
      await refuseOnePerson(tx, deciding, { verdict, secondPersonId });
      const decided = { kind, subjectId: subject.id, bag: subject.bag, verdict, reason, decidedAt: occurredAt };
      const id = await recordDecision(tx, deciding, { ...decided, secondPersonId });
      return {
        answer: { id, kind, subjectId: subject.id, verdict, decidedAt: occurredAt },
        entry: {
          action: 'decide',
          subject: { kind, id: subject.id },
          before: { verdict: before.verdict },
          after: { id, verdict, ...(secondPersonId === null ? {} : { secondPersonId }) },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async subjectOf(
    tx: Tx,
    siteId: string,
    form: DecideForm,
  ): Promise<{ id: string; label: string; bag: BagRow | null }> {
    const { kind, verdict } = form;
    if (kind === 'bulk-bag') {
      const bag = await findBag(tx, siteId, form.subject);
      await refuseForBag(tx, bag, verdict);
      return { id: bag.id, label: bag.number, bag };
    }
    const subject = await this.subjects.find(tx, siteId, { kind, text: form.subject });
    await refuseForUnit(tx, { ...subject, kind }, verdict);
    return { ...subject, bag: null };
  }
}
