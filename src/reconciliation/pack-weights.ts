import { meanNetFromHandSample } from '../core/average-quantity/mean-net.js';
import { standardUncertaintyWithin } from '../core/mass-balance/uncertainty.js';
import { meanNetsOf, type RunMeanNet } from '../fill-weight/mean-nets.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Scales } from './scales-of-lines.js';

/** What a pack of a run holds, as the account takes it. */
export interface PackWeight {
  readonly basis: 'measured' | 'assumed';
  readonly meanMilligrams: number;
  /** The random part of the mean's standard uncertainty. */
  readonly meanStandardMilligrams: number;
  /** The scale or pack weigher that the mean was taken on, with its standard uncertainty at one pack. */
  readonly scale: { readonly scaleId: string; readonly standardMilligrams: number } | null;
}

/**
 * What the packs of some runs hold: by the weights of all of them, with the error of the weigher; else by the latest good
 * hand sample, its scatter apart from the error of its scale; else the nominal quantity, anywhere within the limits that
 * the format sets.
 */
export async function packWeightsOf(
  from: ReadFrom,
  runIds: readonly string[],
  scales: Scales,
): Promise<ReadonlyMap<string, PackWeight>> {
  const means = await meanNetsOf(from, runIds);
  const samples = await samplesOf(from, runIds);
  return new Map(
    [...means].map(([runId, mean]): [string, PackWeight] => {
      const { basis, meanMilligrams, lowerMilligrams, upperMilligrams } = mean;
      const byWeigher = spreadOfWeigher(mean);
      if (byWeigher !== null) return [runId, { basis, meanMilligrams, ...byWeigher }];
      const sample = samples.get(runId);
      const spread = basis === 'measured' && sample !== undefined ? spreadOfSample(sample, scales) : null;
      if (spread !== null) return [runId, { basis, meanMilligrams, ...spread }];
      const meanStandardMilligrams = standardUncertaintyWithin((upperMilligrams - lowerMilligrams) / 2);
      return [runId, { basis, meanMilligrams, meanStandardMilligrams, scale: null }];
    }),
  );
}

/**
 * Of packs that were weighed one by one nothing is left but the error that all readings share; those that were not may lie
 * anywhere within the limits, and count by their share of the run.
 */
function spreadOfWeigher(mean: RunMeanNet): Pick<PackWeight, 'meanStandardMilligrams' | 'scale'> | null {
  const { weigher, weighedPackCount, unweighedPackCount, lowerMilligrams, upperMilligrams } = mean;
  if (weigher === null) return null;
  const share = unweighedPackCount / (weighedPackCount + unweighedPackCount);
  const standardMilligrams = standardUncertaintyWithin(weigher.maximumPermissibleErrorMilligrams);
  return {
    meanStandardMilligrams: share * standardUncertaintyWithin((upperMilligrams - lowerMilligrams) / 2),
    scale: { scaleId: weigher.id, standardMilligrams },
  };
}

interface Sample {
  readonly runId: string;
  readonly scaleId: string | null;
  /** Canonical text: a list. */
  readonly netDecigrams: string;
}

async function samplesOf(from: ReadFrom, runIds: readonly string[]): Promise<ReadonlyMap<string, Sample>> {
  if (runIds.length === 0) return new Map();
  const rows = await from.sql<Sample>`
    SELECT "run_id" AS "runId", "scale_id" AS "scaleId", "net_decigrams" AS "netDecigrams" FROM "mean_net"
    WHERE "run_id" IN (${() => [...runIds]}) AND "voided_by" IS NULL ORDER BY "weighed_at", "id"`;
  // In the order of time: the latest of a run stays.
  return new Map(rows.map((row) => [row.runId, row]));
}

function spreadOfSample(
  { scaleId, netDecigrams }: Sample,
  scales: Scales,
): Pick<PackWeight, 'meanStandardMilligrams' | 'scale'> | null {
  const nets = JSON.parse(netDecigrams) as readonly number[];
  if (nets.length < 2) return null;
  const spread = meanNetFromHandSample({ netDecigrams: nets, scaleMaximumPermissibleErrorDecigrams: 0 });
  const limits = scaleId === null ? undefined : scales.get(scaleId);
  const standardMilligrams = standardUncertaintyWithin(limits?.maximumPermissibleErrorMilligrams ?? 0);
  return {
    meanStandardMilligrams: spread.standardMilligrams,
    scale: limits === undefined ? null : { scaleId: limits.id, standardMilligrams },
  };
}
