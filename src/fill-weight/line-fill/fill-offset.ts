import { lotVariation, type LotVariation } from '../../core/setpoint/lot-variation.js';
import { leastLots, type UsedLot } from './fill-lot.js';

/** How far the mean net of lots lies from what the filler was set to while they were filled. Masses in milligrams. */
export interface FillOffset {
  readonly lotCount: number;
  /** Over the lots, each the same; above 0 the packs hold more than is set. */
  readonly meanMilligrams: number;
  readonly leastMilligrams: number;
  readonly mostMilligrams: number;
}

/** What is known of how far a line fills from its setting. */
export interface KnownOffset {
  /** Lots that the advice rests on whose setpoint was recorded and left alone. */
  readonly knownLotCount: number;
  /** Null where these are too few. */
  readonly offset: FillOffset | null;
}

export function knownOffset(lots: readonly UsedLot[]): KnownOffset {
  const offsets = ownOffsets(lots);
  if (offsets.length < leastLots) return { knownLotCount: offsets.length, offset: null };
  return {
    knownLotCount: offsets.length,
    offset: {
      lotCount: offsets.length,
      meanMilligrams: offsets.reduce((sum, offset) => sum + offset, 0) / offsets.length,
      leastMilligrams: Math.min(...offsets),
      mostMilligrams: Math.max(...offsets),
    },
  };
}

/** How lots vary, and against what their drift is seen: their own settings where enough of these are known. */
export interface SeenVariation extends LotVariation {
  readonly driftFrom: 'settings' | 'means';
}

/** Null where too few lots can be used. */
export function seenVariation(lots: readonly UsedLot[]): SeenVariation | null {
  if (lots.length < leastLots) return null;
  const ofMeans = lotVariation(lots);
  const known = lots.filter(({ setpointMilligrams }) => setpointMilligrams !== null);
  if (known.length < leastLots) return { ...ofMeans, driftFrom: 'means' };
  const againstSettings = lotVariation(
    known.map((lot) => ({ ...lot, meanMilligrams: lot.meanMilligrams - (lot.setpointMilligrams ?? 0) })),
  );
  const { driftSigmaMilligrams } = againstSettings;
  return { sigmaMilligrams: ofMeans.sigmaMilligrams, driftSigmaMilligrams, driftFrom: 'settings' };
}

/**
 * What the filler is to show for a mean net, rounded up to its step.
 *
 * @param stepMilligrams above 0
 */
export function fillerSetpoint(meanMilligrams: number, offset: FillOffset, stepMilligrams: number): number {
  const steps = (meanMilligrams - offset.meanMilligrams) / stepMilligrams;
  // A sum of whole milligrams may miss a whole step by a hair.
  return Math.ceil(steps - 1e-9) * stepMilligrams;
}

function ownOffsets(lots: readonly UsedLot[]): readonly number[] {
  return lots.flatMap(({ meanMilligrams, setpointMilligrams }) =>
    setpointMilligrams === null ? [] : [meanMilligrams - setpointMilligrams],
  );
}
