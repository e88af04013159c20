import type { BagRow } from '../drying/bulk-bags.js';
import type { BagStanding, HoldRow, ScopeKind } from '../disposition/standings.js';
import { worstState, type StateWord } from '../disposition/worst-state.js';
import type { SourceLink } from '../hopper/hopper-links.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { SentenceFacts } from '../platform/refusal.js';
import { overlaps } from '../packing/run-ranges.js';
import { beyondCounts } from './packs-beyond-count.js';
import { narrowedOf, type Narrowed } from './narrowed-holds.js';
import { isOnCounts, packsHeld } from './timed-packs.js';
import {
  readStandingFacts,
  scopeName,
  scopesOf,
  targetOfPallet,
  type PalletFacts,
  type StandingFacts,
} from './standing-facts.js';

/** Why a pallet stands as it does: a sentence's code and facts. `state` null: worth knowing, but it holds nothing up. */
export interface StandingReason {
  readonly code: string;
  readonly facts: SentenceFacts;
  readonly state: StateWord | null;
  /** The hold that it speaks of, and what that is on. */
  readonly by?: HeldBy;
}

/** An open hold with the name of the thing that it was placed on. */
export interface HeldBy {
  readonly holdId: string;
  readonly hold: string;
  readonly kind: ScopeKind;
  readonly id: string;
  readonly name: string | null;
}

/** How a pallet stands: the worst of its decision, its lots', the open holds, and its possible bags with their results. */
export interface PalletStanding {
  readonly state: StateWord;
  readonly reasons: readonly StandingReason[];
  readonly bags: readonly SourceLink[];
}

/**
 * Computed when asked, never stored. A pallet or lot on which nobody has decided follows its bags; a bag on which
 * nobody has decided is waiting, and so is all it may be in.
 */
export async function standingOfPallet(from: ReadFrom, palletId: string): Promise<PalletStanding> {
  const standing = (await standingsOfPallets(from, [palletId])).get(palletId);
  if (standing === undefined) throw new Error(`no standing of pallet ${palletId}`);
  return standing;
}

/** The same for several pallets: everything is read once for all of them, each hopper period too. */
export async function standingsOfPallets(
  from: ReadFrom,
  palletIds: readonly string[],
): Promise<ReadonlyMap<string, PalletStanding>> {
  if (palletIds.length === 0) return new Map();
  const known = await readStandingFacts(from, palletIds);
  return new Map(
    [...known.pallets].map(([palletId, pallet]) => {
      const reasons = [
        ...reasonsOfDecisions(palletId, pallet, known),
        ...reasonsOfHolds(palletId, pallet, known),
        ...reasonsOfBags(palletId, pallet, known),
        ...reasonsOfCounts(pallet, known),
      ];
      return [palletId, { state: worstOf(reasons), reasons, bags: pallet.links }];
    }),
  );
}

/** The worst that any reason says; without one nothing speaks against it. */
export function worstOf(reasons: readonly StandingReason[]): StateWord {
  return worstState(['released', ...reasons.flatMap((reason) => reason.state ?? [])]);
}

/** What quality said of the pallet, of those it was made from, and of its lots. */
function reasonsOfDecisions(
  palletId: string,
  { spread, contents }: PalletFacts,
  known: StandingFacts,
): readonly StandingReason[] {
  const own = known.palletDecisions.get(palletId);
  const inherited =
    own?.decidedAt == null ? spread.ancestorIds.flatMap((id) => known.palletDecisions.get(id) ?? []) : [];
  const ofPallet = [...(own === undefined ? [] : [own]), ...inherited]
    .filter((decision) => decision.decidedAt !== null)
    .map((decision) => ({
      code: `pallet-${decision.verdict}`,
      facts: { reason: decision.reason },
      state: decision.verdict,
    }));
  const codes = new Map(contents.map((row) => [row.lotId, row.lotCode]));
  const ofLots = [...codes].flatMap(([lotId, lot]): readonly StandingReason[] => {
    const decision = known.lotDecisions.get(lotId);
    if (decision?.decidedAt == null) return [];
    const { verdict, reason } = decision;
    return [{ code: `lot-${verdict}`, facts: { lot, reason }, state: verdict }];
  });
  return [...ofPallet, ...ofLots];
}

/** Packs that were never counted may be packs of another run, with other bags in them: it waits until that is cleared. */
function reasonsOfCounts({ contents }: PalletFacts, { packCounts }: StandingFacts): readonly StandingReason[] {
  return beyondCounts(contents, packCounts).map(({ runId, packCount, toCount }) => ({
    code: 'packs-beyond-count',
    facts: { run: contents.find((row) => row.runId === runId)?.runNumber ?? null, packCount, toCount },
    state: 'waiting',
  }));
}

/** Holds on the pallet, its lots, its runs, its film and hopper periods before it. Those of bags come with the bags. */
function reasonsOfHolds(palletId: string, pallet: PalletFacts, known: StandingFacts): readonly StandingReason[] {
  const names = new Set(scopesOf(palletId, pallet, known.film).map(scopeName));
  const target = targetOfPallet(palletId, pallet);
  const holds = known.holds.filter(
    (hold) => hold.scopeKind === 'packing-shift' || names.has(scopeName({ kind: hold.scopeKind, id: hold.scopeId })),
  );
  return holds.flatMap((hold) => {
    const reach = reachOf(hold, pallet, known);
    return reach === null ? [] : [holdReason(hold, reach, { narrowed: narrowedOf(hold, target, known), known })];
  });
}

type Reach = 'covered' | 'possible';

/** Whether a hold reaches the pallet: surely or likely, only possibly, or not at all (null). */
function reachOf(hold: HoldRow, { spread, heldPeriods }: PalletFacts, { film, timed }: StandingFacts): Reach | null {
  const within = (ranges: readonly { runId: string; fromCount: number; toCount: number | null }[]): Reach | null => {
    if (spread.certain.some((own) => ranges.some((range) => overlaps(own, range)))) return 'covered';
    return spread.possible.some((own) => ranges.some((range) => overlaps(own, range))) ? 'possible' : null;
  };
  if (isOnCounts(hold)) return within(packsHeld(hold, timed));
  if (hold.scopeKind === 'film-lot') return within(film.filter((range) => range.filmLotId === hold.scopeId));
  if (hold.scopeKind === 'hopper-period') {
    const word = heldPeriods.get(hold.scopeId)?.word ?? null;
    return word === null || word === 'possible' ? word : 'covered';
  }
  return 'covered';
}

/**
 * A safety hold covers all that is possible; a quality hold what is sure and likely, and names the rest. What quality
 * took out of a hold is out of it as long as nothing else has come to it.
 */
function holdReason(
  hold: HoldRow,
  reach: Reach,
  asked: { readonly narrowed: Narrowed; readonly known: StandingFacts; readonly bag?: BagRow },
): StandingReason {
  const { narrowed, known, bag } = asked;
  const by = heldBy(hold, known.heldNames);
  const isCovered = (hold.hazard === 'safety' || reach === 'covered') && narrowed !== 'out';
  const held = narrowed === 'again' ? 'held-again-by' : 'held-by';
  return {
    code: narrowed === 'out' ? 'taken-out-of' : isCovered ? held : 'perhaps-held-by',
    facts: { ...factsOfHold(hold, by), bag: bag?.number ?? null },
    state: isCovered ? 'on-hold' : null,
    by,
  };
}

export function heldBy(hold: HoldRow, names: ReadonlyMap<string, string>): HeldBy {
  const { id: holdId, number, scopeKind: kind, scopeId: id } = hold;
  return { holdId, hold: number, kind, id, name: names.get(id) ?? null };
}

/** What a sentence about a hold is filled with. */
export function factsOfHold({ number, hazard, reason }: HoldRow, { kind, name }: HeldBy): SentenceFacts {
  return { hold: number, hazard, reason, kind, on: name };
}

/** What is said of each bag whose sugar may be in the packs. A doubtful weight keeps a bag from sale, not its sugar. */
function reasonsOfBags(palletId: string, pallet: PalletFacts, known: StandingFacts): readonly StandingReason[] {
  const { links } = pallet;
  const target = targetOfPallet(palletId, pallet);
  const bagIds = [...new Set(links.map((link) => link.bagId))];
  if (bagIds.length === 0) return [{ code: 'no-bag-known', facts: {}, state: 'waiting' }];
  return bagIds.flatMap((bagId) => {
    const [bag, standing] = [known.bags.get(bagId), known.standings.get(bagId)];
    if (bag === undefined || standing === undefined) return [];
    const isLikely = links.some((link) => link.bagId === bagId && link.word !== 'possible');
    const reach = isLikely ? 'covered' : 'possible';
    const held = standing.holds.map((hold) =>
      holdReason(hold, reach, { narrowed: narrowedOf(hold, target, known), known, bag }),
    );
    return [...reasonsOfBag(bag, standing, known.outside.has(bagId)), ...held];
  });
}

function reasonsOfBag(bag: BagRow, { decision }: BagStanding, isOutside: boolean): readonly StandingReason[] {
  const { verdict, reason } = decision;
  if (verdict !== 'released')
    return [{ code: `possible-bag-${verdict}`, facts: { bag: bag.number, reason }, state: verdict }];
  return isOutside ? [{ code: 'bag-result-outside', facts: { bag: bag.number }, state: 'waiting' }] : [];
}
