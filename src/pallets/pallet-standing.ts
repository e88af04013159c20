import { bagsOf, type BagRow } from '../drying/bulk-bags.js';
import { decisionOn, decisionsOn, openHolds, standingsOf } from '../disposition/standings.js';
import type { BagStanding, DecisionRow, HoldRow, HoldScope } from '../disposition/standings.js';
import { worstState, type StateWord } from '../disposition/worst-state.js';
import { sourcesOfTargets, type SourceLink } from '../hopper/hopper-links.js';
import { filmRangesOfRuns } from '../packing/packing-runs.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { SentenceFacts } from '../platform/refusal.js';
import { overlaps } from '../packing/run-ranges.js';
import { bagsOutside } from './bags-outside.js';
import { packsBeyondCount } from './packs-beyond-count.js';
import { contentsOf } from './pallet-list.js';
import type { ContentRow } from './pallet-rows.js';
import { spreadOf, type PalletSpread } from './pallet-spread.js';

/** Why a pallet stands as it does: a sentence's code and facts. `state` null: worth knowing, but it holds nothing up. */
export interface StandingReason {
  readonly code: string;
  readonly facts: SentenceFacts;
  readonly state: StateWord | null;
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

/** The same for several pallets: each hopper period is read once for all of them, and each bag's reasons once. */
export async function standingsOfPallets(
  from: ReadFrom,
  palletIds: readonly string[],
): Promise<ReadonlyMap<string, PalletStanding>> {
  const spreads: PalletSpread[] = [];
  for (const palletId of palletIds) spreads.push(await spreadOf(from, palletId));
  const links = await sourcesOfTargets(
    from,
    spreads.map((spread) => ({ ranges: spread.possible, certain: spread.certain })),
  );
  const bags = await readBags(from, links.flat());
  const standings = new Map<string, PalletStanding>();
  for (const [place, palletId] of palletIds.entries()) {
    const [spread, own] = [spreads[place], links[place] ?? []];
    if (spread === undefined) continue;
    const contents = await contentsOf(from, [palletId]);
    const reasons = [
      ...(await reasonsOfDecisions(from, palletId, spread, contents)),
      ...(await reasonsOfHolds(from, palletId, { spread, contents, links: own })),
      ...reasonsOfBags(bags, own),
      ...(await reasonsOfCounts(from, contents)),
    ];
    standings.set(palletId, { state: worstOf(reasons), reasons, bags: own });
  }
  return standings;
}

/** The worst that any reason says; without one nothing speaks against it. */
export function worstOf(reasons: readonly StandingReason[]): StateWord {
  return worstState(['released', ...reasons.flatMap((reason) => reason.state ?? [])]);
}

/** What quality said of the pallet, of those it was made from, and of its lots. */
async function reasonsOfDecisions(
  from: ReadFrom,
  palletId: string,
  spread: PalletSpread,
  contents: readonly ContentRow[],
): Promise<readonly StandingReason[]> {
  const own = await decisionOn(from, 'pallet', palletId);
  const inherited: ReadonlyMap<string, DecisionRow> =
    own.decidedAt === null ? await decisionsOn(from, 'pallet', spread.ancestorIds) : new Map();
  const ofPallet = [own, ...inherited.values()]
    .filter((decision) => decision.decidedAt !== null)
    .map((decision) => ({
      code: `pallet-${decision.verdict}`,
      facts: { reason: decision.reason },
      state: decision.verdict,
    }));
  const codes = new Map(contents.map((row) => [row.lotId, row.lotCode]));
  const decisions = await decisionsOn(from, 'lot', [...codes.keys()]);
  const ofLots = [...decisions]
    .filter(([, decision]) => decision.decidedAt !== null)
    .map(([lotId, { verdict, reason }]) => ({
      code: `lot-${verdict}`,
      facts: { lot: codes.get(lotId) ?? null, reason },
      state: verdict,
    }));
  return [...ofPallet, ...ofLots];
}

/** Packs that were never counted may be packs of another run, with other bags in them: it waits until that is cleared. */
async function reasonsOfCounts(from: ReadFrom, contents: readonly ContentRow[]): Promise<readonly StandingReason[]> {
  const numbers = new Map(contents.map((row) => [row.runId, row.runNumber]));
  const beyond = await packsBeyondCount(from, contents);
  return beyond.map(({ runId, packCount, toCount }) => ({
    code: 'packs-beyond-count',
    facts: { run: numbers.get(runId) ?? null, packCount, toCount },
    state: 'waiting',
  }));
}

interface Held {
  readonly spread: PalletSpread;
  readonly contents: readonly ContentRow[];
  readonly links: readonly SourceLink[];
}

/** Holds on the pallet, its lots, its runs, its film and its hopper periods. Those of bags come with the bags. */
async function reasonsOfHolds(from: ReadFrom, palletId: string, held: Held): Promise<readonly StandingReason[]> {
  const { spread, contents, links } = held;
  const runIds = [...new Set(spread.possible.map((range) => range.runId))];
  const film = await filmRangesOfRuns(from, runIds);
  const onFilm = film.filter((range) => spread.possible.some((own) => overlaps(own, range)));
  const scopes: readonly HoldScope[] = [
    ...[palletId, ...spread.ancestorIds].map((id) => scope('pallet', id)),
    ...contents.map((row) => scope('lot', row.lotId)),
    ...runIds.map((id) => scope('packing-run', id)),
    ...onFilm.map((range) => scope('film-lot', range.filmLotId)),
    ...links.map((link) => scope('hopper-period', link.periodId)),
  ];
  const holds = await openHolds(from, scopes);
  return holds.flatMap((hold) => {
    const reach = reachOf(hold, held, film);
    return reach === null ? [] : [holdReason(hold, reach)];
  });
}

function scope(kind: HoldScope['kind'], id: string): HoldScope {
  return { kind, id };
}

type Reach = 'covered' | 'possible';

/** Whether a hold reaches the pallet: surely or likely, only possibly, or not at all (null). */
function reachOf(
  hold: HoldRow,
  { spread, links }: Held,
  film: Awaited<ReturnType<typeof filmRangesOfRuns>>,
): Reach | null {
  const within = (ranges: readonly { runId: string; fromCount: number; toCount: number | null }[]): Reach | null => {
    if (spread.certain.some((own) => ranges.some((range) => overlaps(own, range)))) return 'covered';
    return spread.possible.some((own) => ranges.some((range) => overlaps(own, range))) ? 'possible' : null;
  };
  if (hold.scopeKind === 'packing-run') {
    return within([{ runId: hold.scopeId, fromCount: hold.fromCount ?? 0, toCount: hold.toCount }]);
  }
  if (hold.scopeKind === 'film-lot') return within(film.filter((range) => range.filmLotId === hold.scopeId));
  if (hold.scopeKind === 'hopper-period') {
    const words = links.filter((link) => link.periodId === hold.scopeId).map((link) => link.word);
    return words.some((word) => word !== 'possible') ? 'covered' : 'possible';
  }
  return 'covered';
}

/** A safety hold covers all that is possible; a quality hold what is sure and likely, and names the rest. */
function holdReason(hold: HoldRow, reach: Reach, bag: BagRow | null = null): StandingReason {
  const isCovered = hold.hazard === 'safety' || reach === 'covered';
  return {
    code: isCovered ? 'held-by' : 'perhaps-held-by',
    facts: { hold: hold.number, hazard: hold.hazard, reason: hold.reason, bag: bag?.number ?? null },
    state: isCovered ? 'on-hold' : null,
  };
}

/** Bags with what is said of them. */
interface KnownBags {
  readonly bags: ReadonlyMap<string, BagRow>;
  readonly standings: ReadonlyMap<string, BagStanding>;
  /** A result is outside of the specification. */
  readonly outside: ReadonlySet<string>;
}

async function readBags(from: ReadFrom, links: readonly SourceLink[]): Promise<KnownBags> {
  const bags = await bagsOf(
    from,
    links.map((link) => link.bagId),
  );
  const standings = await standingsOf(from, bags);
  const outside = await bagsOutside(from, bags, standings);
  return { bags: new Map(bags.map((bag) => [bag.id, bag])), standings, outside };
}

/** What is said of each bag whose sugar may be in the packs. A doubtful weight keeps a bag from sale, not its sugar. */
function reasonsOfBags(known: KnownBags, links: readonly SourceLink[]): readonly StandingReason[] {
  const bagIds = [...new Set(links.map((link) => link.bagId))];
  if (bagIds.length === 0) return [{ code: 'no-bag-known', facts: {}, state: 'waiting' }];
  return bagIds.flatMap((bagId) => {
    const [bag, standing] = [known.bags.get(bagId), known.standings.get(bagId)];
    if (bag === undefined || standing === undefined) return [];
    const isLikely = links.some((link) => link.bagId === bagId && link.word !== 'possible');
    const held = standing.holds.map((hold) => holdReason(hold, isLikely ? 'covered' : 'possible', bag));
    return [...reasonsOfBag(bag, standing, known.outside.has(bagId)), ...held];
  });
}

function reasonsOfBag(bag: BagRow, { decision }: BagStanding, isOutside: boolean): readonly StandingReason[] {
  const { verdict, reason } = decision;
  if (verdict !== 'released')
    return [{ code: `possible-bag-${verdict}`, facts: { bag: bag.number, reason }, state: verdict }];
  return isOutside ? [{ code: 'bag-result-outside', facts: { bag: bag.number }, state: 'waiting' }] : [];
}
