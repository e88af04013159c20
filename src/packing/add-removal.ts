import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { BadForm, NotFound, Refusal } from '../platform/refusal.js';
import { formatOf, hopperOf, hopperOfLine, lineOf, scaleStandingAt } from '../plant/plant-facts.js';
import type { RemovalRow, RunRow } from './packing-run-rows.js';
import { runOfLineAt } from './packing-runs.js';
import { Removal } from './removal.entity.js';

/** Sugar taken away, as it was stated. */
export interface RemovalDraft {
  readonly id: string;
  readonly siteId: string;
  readonly kind: Removal['kind'];
  readonly lineId: string | null;
  readonly hopperId: string | null;
  readonly packCount: number | null;
  readonly netGrams: number | null;
  readonly scaleId: string | null;
  readonly reason: string;
  readonly fate: Removal['fate'];
  readonly removedAt: Instant;
  /** It is so already: what a scale that failed its check has shown is recorded, and the caller opens a point. */
  readonly hasHappened?: boolean;
}

export type RemovalAnswer = Omit<RemovalRow, 'scaleErrorMilligrams'>;

/** What the column holds: no line takes two thousand tonnes away at once. */
const mostGrams = 2_000_000_000;

/** What must never go back into the product, whoever decides. */
const neverRework: Readonly<Record<string, string>> = { sweepings: 'sweepings', metal: 'metal' };

/**
 * Records sugar that left otherwise than in accepted packs, with the run and the hopper of that time.
 *
 * @throws {Refusal} `never-rework`, `no-run-then`, `line-without-hopper`, `scale-has-failed`
 */
export async function addRemoval(tx: Tx, draft: RemovalDraft): Promise<RemovalAnswer> {
  refuseHalfAForm(draft);
  const barred = neverRework[draft.kind] ?? neverRework[draft.reason];
  if (barred !== undefined && draft.fate === 'rework') throw new Refusal('never-rework', { what: barred });
  const place = await placeOf(tx, draft);
  await refuseUselessScale(tx, draft);
  const { netGrams, ...rest } = withoutHappening(draft);
  const grams = netGrams ?? (await nominalGramsOf(tx, place.run, draft.packCount ?? 0));
  const row = { ...rest, runId: place.run?.id ?? null, hopperId: place.hopperId, grams };
  await tx.insert(Removal, row);
  return row;
}

function withoutHappening(draft: RemovalDraft): Omit<RemovalDraft, 'hasHappened'> {
  const row: { -readonly [Key in keyof RemovalDraft]: RemovalDraft[Key] } = { ...draft };
  delete row.hasHappened;
  return row;
}

function refuseHalfAForm(draft: RemovalDraft): void {
  const missing = (field: string, code = 'field-missing'): never => {
    throw new BadForm([{ field, code, facts: {} }]);
  };
  if (draft.lineId === null && draft.hopperId === null) missing('lineId', 'line-or-hopper-missing');
  if (draft.lineId !== null && draft.hopperId !== null) missing('hopperId', 'line-and-hopper');
  if (draft.netGrams === null && draft.packCount === null) missing('netGrams', 'grams-or-packs-missing');
  if (draft.netGrams !== null && draft.scaleId === null) missing('scaleId');
  if (draft.netGrams === null && draft.scaleId !== null) missing('netGrams');
  if (draft.packCount !== null && draft.lineId === null) missing('lineId');
}

interface Place {
  readonly run: RunRow | null;
  readonly hopperId: string;
}

/** Where it left: by the line's run and hopper at that time, or straight from a hopper. */
async function placeOf(tx: Tx, draft: RemovalDraft): Promise<Place> {
  const { lineId, removedAt } = draft;
  if (lineId === null) return { run: null, hopperId: await hopperOfSite(tx, draft) };
  const line = await lineOf(tx, lineId);
  if (line.siteId !== draft.siteId) throw new NotFound('packing-line', lineId);
  const run = await runOfLineAt(tx, lineId, removedAt);
  const needsRun = draft.kind === 'reject' || draft.packCount !== null;
  if (run === null && needsRun) throw new Refusal('no-run-then', { line: line.code, at: removedAt });
  const hopperId = await hopperOfLine(tx, lineId, removedAt);
  if (hopperId === null) throw new Refusal('line-without-hopper', { line: line.code, at: removedAt });
  return { run, hopperId };
}

async function hopperOfSite(tx: Tx, draft: RemovalDraft): Promise<string> {
  const hopper = await hopperOf(tx, draft.hopperId ?? '');
  if (hopper.siteId !== draft.siteId) throw new NotFound('hopper', hopper.id);
  if (draft.kind === 'reject') throw new BadForm([{ field: 'lineId', code: 'field-missing', facts: {} }]);
  return hopper.id;
}

/** An overdue scale's reading stands as it was read; one that failed its check says nothing. */
async function refuseUselessScale(tx: Tx, draft: RemovalDraft): Promise<void> {
  const failed = await failedScaleOf(tx, draft);
  if (failed !== null && draft.hasHappened !== true) throw new Refusal('scale-has-failed', { scale: failed });
}

/**
 * The scale that the sugar was weighed on, where it had failed its check; else null.
 *
 * @throws {NotFound} `scale`
 */
export async function failedScaleOf(
  from: ReadFrom,
  { siteId, scaleId, removedAt }: Pick<RemovalDraft, 'siteId' | 'scaleId' | 'removedAt'>,
): Promise<string | null> {
  if (scaleId === null) return null;
  const { scale, hasFailed } = await scaleStandingAt(from, scaleId, removedAt);
  if (scale.siteId !== siteId) throw new NotFound('scale', scaleId);
  return hasFailed ? scale.code : null;
}

async function nominalGramsOf(tx: Tx, run: RunRow | null, packCount: number): Promise<number> {
  if (run === null) throw new RangeError('packs without a run');
  const grams = packCount * (await formatOf(tx, run.formatId)).nominalGrams;
  if (grams <= mostGrams) return grams;
  throw new BadForm([{ field: 'packCount', code: 'field-not-whole', facts: { least: 1, most: mostGrams } }]);
}
