import { Injectable } from '@nestjs/common';
import type { Asked, Subject } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import type { Actor } from '../platform/actor.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { CoderClock } from './coder-clock.entity.js';
import { GradeSpecification } from './grade-specification.entity.js';
import { HopperLine } from './hopper-line.entity.js';
import { ofSite } from './of-site.js';
import { PackFormatGrade } from './pack-format-grade.entity.js';
import { coderOf, formatOf, gradeOf, scaleStandingAt } from './plant-facts.js';
import { RuleSet } from './rule-set.entity.js';
import type { CorrectableKind, CorrectPlantRecordForm } from './rules.form.js';
import { ScaleCheck } from './scale-check.entity.js';
import { leaveLooksAtScale } from './scale-job.js';
import { ScaleVerification } from './scale-verification.entity.js';
import { ShiftPatternVersion } from './shift-pattern.entity.js';

/** The record to correct: what it is about, and from when on it is valid where it is a rule of the house. */
interface FoundRecord {
  readonly subject: Subject;
  readonly ruleFrom: string | null;
}

const entityOf = {
  'hopper-line': HopperLine,
  'coder-clock': CoderClock,
  'pack-format-grade': PackFormatGrade,
  'scale-check': ScaleCheck,
  'scale-verification': ScaleVerification,
  specification: GradeSpecification,
  'shift-pattern': ShiftPatternVersion,
  'rule-set': RuleSet,
} as const;

/**
 * A record of the set-up was wrong: it stays, and names its correction. The right one is entered anew. A rule that has
 * come into force is not taken back, since things were judged by it; a new version takes over.
 * Refusals: `already-corrected`, `rule-in-force`.
 */
@Injectable()
export class CorrectPlantRecord {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: CorrectPlantRecordForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const kind = form.kind as CorrectableKind;
      const { subject, ruleFrom } = await find(tx, asked.actor, kind, form.id);
      if (ruleFrom !== null && ruleFrom <= change.recordedAt) throw new Refusal('rule-in-force', { since: ruleFrom });
      await voidFact(tx, entityOf[kind], form.id, change);
      if (subject.kind === 'scale') {
        const look = { siteId: asked.actor.siteId, scaleId: subject.id, at: [change.recordedAt] };
        await leaveLooksAtScale(tx, () => this.ids.next(), look);
      }
      return {
        answer: { id: form.id },
        entry: {
          action: 'correct-plant-record',
          subject,
          before: { kind, id: form.id },
          after: { correctionReason: form.correctionReason },
          reason: form.reason,
        },
      };
    });
  }
}

async function find(tx: Tx, actor: Actor, kind: CorrectableKind, id: string): Promise<FoundRecord> {
  const row = (await tx.findOne(entityOf[kind], { id })) as Record<string, string> | null;
  if (row === null) throw new NotFound(kind, id);
  const subject = await subjectOf(tx, actor, row);
  const isRule = kind === 'specification' || kind === 'shift-pattern' || kind === 'rule-set';
  return { subject, ruleFrom: isRule ? (row['validFrom'] ?? null) : null };
}

/** What a record is about, found by the reference that it carries; only for somebody of the site. */
async function subjectOf(tx: Tx, actor: Actor, row: Record<string, string>): Promise<Subject> {
  const { siteId, lineId, coderId, formatId, gradeId, scaleId } = row;
  if (scaleId !== undefined) {
    const { scale } = await scaleStandingAt(tx, scaleId, '9999-01-01T00:00:00.000Z');
    return { kind: 'scale', id: ofSite(actor, 'scale', scale).id };
  }
  if (coderId !== undefined) return { kind: 'coder', id: ofSite(actor, 'coder', await coderOf(tx, coderId)).id };
  if (formatId !== undefined)
    return { kind: 'pack-format', id: ofSite(actor, 'pack-format', await formatOf(tx, formatId)).id };
  if (gradeId !== undefined) return { kind: 'grade', id: ofSite(actor, 'grade', await gradeOf(tx, gradeId)).id };
  if (siteId !== actor.siteId) throw new NotFound('site', siteId ?? '');
  return lineId === undefined ? { kind: 'site', id: siteId } : { kind: 'packing-line', id: lineId };
}
