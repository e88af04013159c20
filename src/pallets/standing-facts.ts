import { bagsOf, type BagRow } from '../drying/bulk-bags.js';
import { decisionsOn, openHolds, openHoldsOnKind, standingsOf } from '../disposition/standings.js';
import type { BagStanding, DecisionRow, HoldRow, HoldScope } from '../disposition/standings.js';
import { sourcesOfTargets, type SourceLink } from '../hopper/hopper-links.js';
import type { FilmRange } from '../packing/packing-run-rows.js';
import { filmRangesOfRuns } from '../packing/packing-runs.js';
import { overlaps } from '../packing/run-ranges.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { bagsOutside } from './bags-outside.js';
import { namesOfHeld } from './held-things.js';
import { heldPeriodsIn, type PeriodReach } from './held-periods.js';
import type { HoldTarget } from './hold-ground.js';
import { standingParts, type StandingParts } from './narrowed-holds.js';
import { packCountsOf } from './packs-beyond-count.js';
import { contentsOf } from './pallet-list.js';
import type { ContentRow } from './pallet-rows.js';
import { spreadsOf, type PalletSpread } from './pallet-spread.js';
import { timedPacks, type TimedPacks } from './timed-packs.js';

/** What is known of one pallet before anything is said of it. */
export interface PalletFacts {
  readonly spread: PalletSpread;
  readonly contents: readonly ContentRow[];
  readonly links: readonly SourceLink[];
  readonly heldPeriods: ReadonlyMap<string, PeriodReach>;
}

/** All that the standings of some pallets rest on, read once for all of them. */
export interface StandingFacts {
  readonly pallets: ReadonlyMap<string, PalletFacts>;
  /** Of the pallets and of those they were made from. */
  readonly palletDecisions: ReadonlyMap<string, DecisionRow>;
  readonly lotDecisions: ReadonlyMap<string, DecisionRow>;
  readonly film: readonly FilmRange[];
  readonly timed: TimedPacks;
  /** Open holds on anything but bags. */
  readonly holds: readonly HoldRow[];
  /** By the id of what is held, by those holds or one on a bag: its name. */
  readonly heldNames: ReadonlyMap<string, string>;
  /** By hold, those on bags too: what was taken out of it. */
  readonly parts: StandingParts;
  /** By run: what it has counted. */
  readonly packCounts: ReadonlyMap<string, number>;
  readonly bags: ReadonlyMap<string, BagRow>;
  readonly standings: ReadonlyMap<string, BagStanding>;
  /** Bags with a result outside of the specification. */
  readonly outside: ReadonlySet<string>;
}

export async function readStandingFacts(from: ReadFrom, palletIds: readonly string[]): Promise<StandingFacts> {
  const spreads = await spreadsOf(from, palletIds);
  const contents = groupBy(await contentsOf(from, palletIds), (row) => row.palletId);
  const targets = [...spreads.values()].map(({ possible, certain }) => ({ ranges: possible, certain }));
  const links = await sourcesOfTargets(from, targets);
  const heldPeriods = await heldPeriodsIn(
    from,
    targets.map((target, place) => ({ ...target, links: links[place] ?? [] })),
  );
  const pallets = new Map(
    [...spreads].map(([palletId, spread], place) => [
      palletId,
      {
        spread,
        contents: contents.get(palletId) ?? [],
        links: links[place] ?? [],
        heldPeriods: heldPeriods[place] ?? new Map<string, PeriodReach>(),
      },
    ]),
  );
  const all = [...pallets.values()];
  const runIds = [...new Set(all.flatMap(({ spread }) => spread.possible.map((range) => range.runId)))];
  const film = await filmRangesOfRuns(from, runIds);
  const scopes = [...pallets].flatMap(([palletId, pallet]) => scopesOf(palletId, pallet, film));
  const familyIds = [...pallets.keys(), ...all.flatMap(({ spread }) => spread.ancestorIds)];
  const lotIds = all.flatMap((pallet) => pallet.contents.map((row) => row.lotId));
  // A shift is found by its time, not by what stands on a pallet; few of them are on hold.
  const holds = [...(await openHolds(from, scopes)), ...(await openHoldsOnKind(from, 'packing-shift'))];
  const ofBags = await readBags(from, links.flat());
  const allHolds = [...holds, ...holdsOfBags(ofBags.standings)];
  return {
    pallets,
    palletDecisions: await decisionsOn(from, 'pallet', familyIds),
    lotDecisions: await decisionsOn(from, 'lot', lotIds),
    film,
    timed: await timedPacks(from, holds),
    holds,
    heldNames: await namesOfHeld(
      from,
      allHolds.map(({ scopeKind: kind, scopeId }) => ({ kind, id: scopeId })),
    ),
    parts: await standingParts(from, allHolds),
    packCounts: await packCountsOf(
      from,
      all.flatMap((pallet) => pallet.contents),
    ),
    ...ofBags,
  };
}

/** What a hold may be placed on that reaches a pallet, but for its bags. */
export function scopesOf(
  palletId: string,
  { spread, contents, heldPeriods }: PalletFacts,
  film: readonly FilmRange[],
): readonly HoldScope[] {
  const runIds = [...new Set(spread.possible.map((range) => range.runId))];
  const onFilm = film.filter((range) => spread.possible.some((own) => overlaps(own, range)));
  return [
    ...[palletId, ...spread.ancestorIds].map((id): HoldScope => ({ kind: 'pallet', id })),
    ...contents.map((row): HoldScope => ({ kind: 'lot', id: row.lotId })),
    ...runIds.map((id): HoldScope => ({ kind: 'packing-run', id })),
    ...onFilm.map((range): HoldScope => ({ kind: 'film-lot', id: range.filmLotId })),
    ...[...heldPeriods.keys()].map((id): HoldScope => ({ kind: 'hopper-period', id })),
  ];
}

/** A pallet as something that a hold may reach. */
export function targetOfPallet(palletId: string, { spread, contents, links, heldPeriods }: PalletFacts): HoldTarget {
  return { palletIds: [palletId, ...spread.ancestorIds], possible: spread.possible, contents, links, heldPeriods };
}

function holdsOfBags(standings: StandingFacts['standings']): readonly HoldRow[] {
  return [...new Map([...standings.values()].flatMap(({ holds }) => holds.map((hold) => [hold.id, hold]))).values()];
}

export function scopeName({ kind, id }: HoldScope): string {
  return `${kind} ${id}`;
}

async function readBags(
  from: ReadFrom,
  links: readonly SourceLink[],
): Promise<Pick<StandingFacts, 'bags' | 'standings' | 'outside'>> {
  const bags = await bagsOf(
    from,
    links.map((link) => link.bagId),
  );
  const standings = await standingsOf(from, bags);
  const outside = await bagsOutside(from, bags, standings);
  return { bags: new Map(bags.map((bag) => [bag.id, bag])), standings, outside };
}
