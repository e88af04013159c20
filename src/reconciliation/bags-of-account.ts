import { noUncertainty, standardUncertaintyWithin, type Uncertainty } from '../core/mass-balance/uncertainty.js';
import type { AdditionFact } from '../hopper/addition-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { AccountLine } from './account-view.js';
import {
  labelsOfPoured,
  offsOfTips,
  pouredBetween,
  weighingsOnScales,
  type BagOff,
  type BagOnScale,
  type HopperTime,
  type PouredLabels,
} from './poured-between.js';
import { uncertaintyOnScale, type Scales } from './scales-of-lines.js';
import { toLine } from './to-line.js';

/** Bags and bins that were opened over a hopper in a time. */
export interface BagLines {
  /** In: each bag and bin with its net; out: what was weighed back of it. */
  readonly lines: readonly AccountLine[];
  /** Numbers of bags that nobody has recorded as off. */
  readonly hangingBags: readonly string[];
}

/**
 * The bags opened over a hopper from an instant on and before another. A bag belongs to the account in which its spout
 * was opened, and what was weighed back of it too, whenever that was: so no account has half of a bag.
 */
export async function bagsOfAccount(from: ReadFrom, time: HopperTime, scales: Scales): Promise<BagLines> {
  const poured = await pouredBetween(from, time);
  const tipIds = poured.map(({ id }) => id);
  const seen = {
    offs: await offsOfTips(from, tipIds),
    weighings: await weighingsOnScales(
      from,
      poured.flatMap(({ bagIds }) => bagIds),
    ),
    labels: await labelsOfPoured(from, poured),
    scales,
  };
  const hanging = poured.filter(({ id, source }) => source !== 'rework-bin' && !seen.offs.has(id));
  return {
    lines: poured.flatMap((addition) =>
      addition.binId === null ? bagLines(addition, seen) : [binLine(addition, addition.binId, seen)],
    ),
    hangingBags: hanging.map(({ bagIds }) => bagIds.map((id) => seen.labels.numbers.get(id) ?? id).join(' / ')),
  };
}

interface Seen {
  readonly offs: ReadonlyMap<string, BagOff>;
  readonly weighings: readonly BagOnScale[];
  readonly labels: PouredLabels;
  readonly scales: Scales;
}

function bagLines(addition: AdditionFact, seen: Seen): readonly AccountLine[] {
  const off = seen.offs.get(addition.id) ?? null;
  const [onlyBagId, ...others] = addition.bagIds;
  const bagId = others.length === 0 ? (onlyBagId ?? null) : null;
  const held = bagId === null ? null : heldWhenOpened(bagId, addition, off, seen.weighings);
  const rest = off?.weighingId == null ? null : (seen.weighings.find(({ id }) => id === off.weighingId) ?? null);
  const restGrams = rest?.netGrams ?? off?.restGrams ?? 0;
  const line = { recordId: addition.id, code: bagId === null ? null : (seen.labels.numbers.get(bagId) ?? null) };
  const poured = toLine({
    ...line,
    side: 'in',
    kind: 'bag-tipped',
    at: addition.openedAt,
    // Of one of several bags only the mean of what they may have brought is known, with its limits.
    grams: held?.netGrams ?? addition.mass.grams + restGrams,
    basis: held === null ? 'assumed' : 'measured',
    uncertainty: held === null ? withinMass(addition) : onScaleOf(held, seen.scales),
    isDoubtful: held?.isDoubtful ?? false,
    packs: null,
  });
  if (off === null || restGrams === 0) return [poured];
  const weighedBack = toLine({
    ...line,
    side: 'out',
    kind: 'weighed-back',
    at: off.offAt,
    grams: restGrams,
    basis: rest === null ? 'assumed' : 'measured',
    uncertainty: rest === null ? noUncertainty : onScaleOf(rest, seen.scales),
    isDoubtful: rest?.isDoubtful ?? false,
    packs: null,
  });
  return [poured, weighedBack];
}

/**
 * What was in the bag by its latest good weighing before it was opened, its own weighing back aside. A tip whose time
 * was set back may stand before the weighing that it followed: then the first one. The rule of the hopper's flow.
 */
function heldWhenOpened(
  bagId: string,
  { openedAt }: AdditionFact,
  off: BagOff | null,
  weighings: readonly BagOnScale[],
): BagOnScale | null {
  const own = weighings.filter((one) => one.bagId === bagId && one.id !== off?.weighingId);
  return own.findLast(({ weighedAt }) => weighedAt <= openedAt) ?? own[0] ?? null;
}

function binLine(addition: AdditionFact, binId: string, seen: Seen): AccountLine {
  const scale = seen.scales.get(seen.labels.binScales.get(binId) ?? '') ?? null;
  return toLine({
    side: 'in',
    kind: 'rework',
    recordId: addition.id,
    code: seen.labels.numbers.get(binId) ?? null,
    at: addition.openedAt,
    grams: addition.mass.grams,
    basis: scale === null ? 'assumed' : 'measured',
    uncertainty: scale === null ? withinMass(addition) : uncertaintyOnScale(scale, 2),
    isDoubtful: false,
    packs: null,
  });
}

function onScaleOf(weighing: BagOnScale, scales: Scales): Uncertainty {
  const scale = scales.get(weighing.scaleId);
  return scale === undefined ? noUncertainty : uncertaintyOnScale(scale, weighing.isPresetTare ? 1 : 2);
}

function withinMass({ mass }: AdditionFact): Uncertainty {
  const limitGrams = Math.max(mass.grams - mass.lowerGrams, mass.upperGrams - mass.grams);
  return { standardGrams: standardUncertaintyWithin(limitGrams), sharedBy: null, sharedStandardGrams: 0 };
}
