import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { BadForm, NotFound, Refusal } from '../platform/refusal.js';
import { coderOfLine } from '../plant/plant-facts.js';
import { raisePoint, type PointDraft } from '../open-points/raise-point.js';
import { CoderChange } from './coder-change.entity.js';
import { refuseCountThatDoesNotFit } from './count-neighbours.js';
import { recordCount } from './count-packs.js';
import { findOrMakeLot } from './make-lot.js';
import type { RunRow } from './packing-run-rows.js';
import { compareCode } from './printed-codes.js';

/** What was read off a pack, and from which pack on; `wasRead`: the counter was read for it. */
export interface CoderChangeDraft {
  readonly run: RunRow;
  readonly typed: string;
  readonly firstPack: number;
  readonly wasRead: boolean;
  readonly changedAt: Instant;
  readonly recordedAt: Instant;
}

export interface CoderChangeAnswer {
  readonly id: string;
  readonly runId: string;
  readonly lotId: string;
  readonly code: string;
  /** Null: the pattern asks for what the line and shift have no word for. */
  readonly intendedCode: string | null;
  readonly isAsIntended: boolean;
  readonly firstPack: number;
  readonly changedAt: Instant;
}

/**
 * Records the code that the coder of a run prints from a pack on. A code other than the intended one is a fact and is
 * kept, and opens a point for quality.
 *
 * @throws {Refusal} `count-goes-back`, `code-printed-already`
 */
export async function addCoderChange(
  tx: Tx,
  nextId: () => string,
  draft: CoderChangeDraft,
): Promise<CoderChangeAnswer> {
  const { run, changedAt, firstPack } = draft;
  const coder = await coderOfLine(tx, run.lineId);
  if (coder === null) throw new NotFound('coder', run.lineCode);
  await refuseCountThatDoesNotFit(tx, { runId: run.id, packCount: firstPack, at: changedAt });
  const { intended, printed, searchCode, isAsIntended } = await compareCode(tx, run, draft.typed, changedAt);
  if (searchCode === '') throw new BadForm([{ field: 'code', code: 'code-without-letters', facts: {} }]);
  const lot = { id: nextId(), siteId: run.siteId, formatId: run.formatId, code: printed, searchCode };
  const lotId = await findOrMakeLot(tx, lot);
  await refuseSameCode(tx, run, lotId, changedAt);
  const id = nextId();
  const change = { id, runId: run.id, coderId: coder.id, lotId, firstPack, changedAt, isAsIntended };
  await tx.insert(CoderChange, { ...change, intendedCode: intended ?? '' });
  if (draft.wasRead) {
    const count = { id: nextId(), runId: run.id, packCount: firstPack, countedAt: changedAt };
    await recordCount(tx, { ...count, occasion: 'coder-change' });
  }
  const answer = {
    id,
    runId: run.id,
    lotId,
    code: printed,
    intendedCode: intended,
    isAsIntended,
    firstPack,
    changedAt,
  };
  if (!isAsIntended) await raisePoint(tx, pointToCode(nextId(), draft, answer));
  return answer;
}

/** The point that a code other than the intended one opens, once a lot. */
export const wrongCodeCause = 'code-not-as-intended';

function pointToCode(id: string, { run, recordedAt }: CoderChangeDraft, answer: CoderChangeAnswer): PointDraft {
  const { code, intendedCode, firstPack, changedAt } = answer;
  return {
    id,
    siteId: run.siteId,
    cause: wrongCodeCause,
    facts: { run: run.number, line: run.lineCode, printed: code, intended: intendedCode, firstPack, changedAt },
    subject: { kind: 'lot', id: answer.lotId },
    role: 'quality-officer',
    at: recordedAt,
  };
}

/** The same code twice in a row is one change entered twice. */
async function refuseSameCode(tx: Tx, run: RunRow, lotId: string, at: Instant): Promise<void> {
  const [before] = await tx.sql<{ lotId: string; code: string; changedAt: Instant }>`
    SELECT c."lot_id" AS "lotId", l."code", c."changed_at" AS "changedAt" FROM "coder_change" c
    JOIN "lot" l ON l."id" = c."lot_id"
    WHERE c."run_id" = ${run.id} AND c."changed_at" <= ${at} AND c."voided_by" IS NULL
    ORDER BY c."changed_at" DESC, c."first_pack" DESC, c."id" DESC LIMIT 1`;
  if (before?.lotId !== lotId) return;
  throw new Refusal('code-printed-already', { run: run.number, code: before.code, changedAt: before.changedAt });
}
