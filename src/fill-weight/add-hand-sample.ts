import { meanNetFromHandSample } from '../core/average-quantity/mean-net.js';
import { unitItLooksLike } from '../core/units/unit-it-looks-like.js';
import { canonicalText } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import type { RunRow } from '../packing/packing-run-rows.js';
import { scaleStandingAt } from '../plant/plant-facts.js';
import { unitMistaken } from './incoming/unit-check.js';
import { MeanNet } from './mean-net.entity.js';

/** A pack farther than this from the nominal quantity was misread or is of another format. Our own value, no source. */
const plausiblePercent = 20;

/** Packs of a run, weighed by hand. */
export interface HandSampleDraft {
  readonly id: string;
  readonly run: RunRow;
  readonly netDecigrams: readonly number[];
  readonly scaleId: string;
  readonly weighedAt: Instant;
  /** It was kept on a device or on paper: it is taken though the scale had failed. */
  readonly hasHappened?: boolean;
}

export interface HandSampleAnswer {
  readonly id: string;
  readonly runId: string;
  readonly scaleId: string;
  readonly samplePackCount: number;
  readonly meanMilligrams: number;
  readonly lowerMilligrams: number;
  readonly upperMilligrams: number;
  readonly weighedAt: Instant;
}

/**
 * Records the mean net that a hand sample gives, with hard limits.
 *
 * @throws {Refusal} `sample-in-kilograms`, `net-far-from-nominal`, `scale-has-failed`, `before-run-start`
 */
export async function addHandSample(tx: Tx, draft: HandSampleDraft): Promise<HandSampleAnswer> {
  const { id, run, netDecigrams, scaleId, weighedAt } = draft;
  // Packs may be weighed after their run was closed, never before they were made.
  if (weighedAt < run.startedAt) {
    throw new Refusal('before-run-start', { run: run.number, startedAt: run.startedAt });
  }
  refuseKilograms(netDecigrams, run);
  refuseImplausibleNets(netDecigrams, run);
  const { scale, hasFailed } = await scaleStandingAt(tx, scaleId, weighedAt);
  if (scale.siteId !== run.siteId) throw new NotFound('scale', scaleId);
  if (hasFailed && draft.hasHappened !== true) throw new Refusal('scale-has-failed', { scale: scale.code });
  const scaleMaximumPermissibleErrorDecigrams = scale.maximumPermissibleErrorMilligrams / 100;
  const net = meanNetFromHandSample({ netDecigrams, scaleMaximumPermissibleErrorDecigrams });
  const answer = {
    id,
    runId: run.id,
    scaleId,
    samplePackCount: net.packCount,
    meanMilligrams: net.meanMilligrams,
    lowerMilligrams: net.lowerMilligrams,
    upperMilligrams: net.upperMilligrams,
    weighedAt,
  };
  await tx.insert(MeanNet, { ...answer, netDecigrams: canonicalText(netDecigrams) });
  return answer;
}

/** @throws {Refusal} `sample-in-kilograms` where most packs weigh a thousandth of what they should */
function refuseKilograms(netDecigrams: readonly number[], { nominalGrams }: RunRow): void {
  const units = netDecigrams.map((net) => unitItLooksLike(net * 100, nominalGrams * 1000));
  const looksLikeKilograms = units.filter((unit) => unit === 'kg').length;
  const counts = { packCount: netDecigrams.length, looksLikeKilograms, looksLikeMilligrams: 0 };
  if (unitMistaken(counts) !== 'kg') return;
  const grams = ((netDecigrams[units.indexOf('kg')] ?? 0) / 10).toFixed(1);
  throw new Refusal('sample-in-kilograms', { grams, nominalGrams });
}

/** @throws {Refusal} `net-far-from-nominal` naming the first such pack */
function refuseImplausibleNets(netDecigrams: readonly number[], { nominalGrams }: RunRow): void {
  const nominal = nominalGrams * 10;
  const place = netDecigrams.findIndex((net) => Math.abs(net - nominal) * 100 > nominal * plausiblePercent);
  if (place < 0) return;
  const grams = ((netDecigrams[place] ?? 0) / 10).toFixed(1);
  throw new Refusal('net-far-from-nominal', { pack: place + 1, grams, nominalGrams, percent: plausiblePercent });
}
