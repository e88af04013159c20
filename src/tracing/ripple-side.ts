import { bagsOf, type BagRow } from '../drying/bulk-bags.js';
import { linksByBag, sourcesOfTargets, type LinkAmounts, type SourceLink } from '../hopper/hopper-links.js';
import { filmRangesOfRuns, lotRangesOfRuns } from '../packing/packing-runs.js';
import { clipped, overlaps, packsIn, type RunRange } from '../packing/run-ranges.js';
import { packCountsOf } from '../pallets/packs-beyond-count.js';
import { contentsOf, palletsOfRanges } from '../pallets/pallet-list.js';
import { standingsOfPallets } from '../pallets/pallet-standing.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { linesOfPallets } from './pallet-lines.js';
import type { RippleScope } from './ripple-scope.js';
import type { PalletLine } from './thread.js';

type Sources = ReadonlyMap<string, LinkAmounts>;

export interface SideLot {
  readonly code: string;
  readonly packCount: number;
  readonly sources: Sources;
}

export interface SidePallet {
  readonly line: PalletLine;
  readonly sources: Sources;
  /** Which packs of which run stand on it, as people count them. */
  readonly packs: readonly string[];
  readonly filmCodes: readonly string[];
  /** Numbers of the holds that cover it. */
  readonly holds: readonly string[];
}

/** What a correction may touch, as the records of one side have it: as they are, or as they would be. */
export interface RippleSide {
  readonly lots: ReadonlyMap<string, SideLot>;
  readonly pallets: ReadonlyMap<string, SidePallet>;
  readonly bags: ReadonlyMap<string, BagRow>;
}

/** The pallets of what may be touched, by one side's records. */
export async function palletIdsOf(from: ReadFrom, { runIds, palletIds }: RippleScope): Promise<readonly string[]> {
  const placed = await palletsOfRanges(
    from,
    runIds.map((runId) => ({ runId, fromCount: 0, toCount: null })),
  );
  return [...new Set([...palletIds, ...placed.map(({ palletId }) => palletId)])];
}

export async function readBags(from: ReadFrom, bagIds: readonly string[]): Promise<RippleSide['bags']> {
  return new Map((await bagsOf(from, bagIds)).map((bag) => [bag.id, bag]));
}

/** The lots of the runs, each with its packs of them. */
export async function readLots(from: ReadFrom, runIds: readonly string[]): Promise<RippleSide['lots']> {
  const whole = runIds.map((runId) => ({ runId, fromCount: 0, toCount: 0 }));
  const counted = await packCountsOf(from, whole);
  const ranges = (await lotRangesOfRuns(from, runIds)).flatMap((range) => {
    const own = clipped({ runId: range.runId, fromCount: 0, toCount: counted.get(range.runId) ?? 0 }, range);
    return own === null ? [] : [{ ...own, lotId: range.lotId, code: range.code }];
  });
  const byLot = [...groupBy(ranges, ({ lotId }) => lotId)];
  const links = await sourcesOfTargets(
    from,
    byLot.map(([, own]) => ({ ranges: plain(own) })),
  );
  return new Map(
    byLot.map(([lotId, own], place) => [
      lotId,
      { code: own[0]?.code ?? '', packCount: packsIn(own), sources: goodLinks(links[place] ?? []) },
    ]),
  );
}

function plain(ranges: readonly RunRange[]): readonly RunRange[] {
  return ranges.map(({ runId, fromCount, toCount }) => ({ runId, fromCount, toCount }));
}

export async function readPallets(from: ReadFrom, palletIds: readonly string[]): Promise<RippleSide['pallets']> {
  const blank = { leastGrams: 0, likelyGrams: 0, mostGrams: 0, word: 'possible', isSubject: true } as const;
  const lines = await linesOfPallets(
    from,
    palletIds.map((palletId) => ({ palletId, ...blank })),
  );
  const contents = groupBy(await contentsOf(from, palletIds), ({ palletId }) => palletId);
  const film = await filmRangesOfRuns(from, [...new Set([...contents.values()].flat().map(({ runId }) => runId))]);
  const standings = await standingsOfPallets(
    from,
    lines.map(({ palletId }) => palletId),
  );
  return new Map(
    lines.map((line) => {
      const { bags = [], reasons = [] } = standings.get(line.palletId) ?? {};
      const own = contents.get(line.palletId) ?? [];
      const codes = film.filter((range) => own.some((row) => overlaps(row, range))).map(({ code }) => code);
      const holds = reasons.filter(({ state }) => state === 'on-hold').map(({ facts }) => String(facts['hold'] ?? ''));
      const packs = own.map(({ runNumber, fromCount, toCount }) => `${runNumber} ${fromCount + 1}–${toCount}`);
      const side = {
        line,
        packs: sorted(packs),
        sources: goodLinks(bags),
        filmCodes: sorted(codes),
        holds: sorted(holds),
      };
      return [line.palletId, side];
    }),
  );
}

function goodLinks(links: readonly SourceLink[]): Sources {
  return new Map([...linksByBag(links)].filter(([, { word }]) => word !== 'ruled-out'));
}

function sorted(texts: readonly string[]): readonly string[] {
  return [...new Set(texts)].filter((text) => text !== '').sort();
}
