import type { Candidate, FormatReading } from '../core/identifiers/recognise.js';
import { normaliseCode } from '../core/identifiers/normalise-code.js';
import { localText } from '../core/shift-calendar/local-time.js';
import { lotsOfItem } from '../packing/run-lists.js';
import type { LotRow } from '../packing/packing-run-rows.js';
import { findLots, lotsByCodes, rangesOfLot } from '../packing/packing-runs.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { siteOf } from '../plant/plant-facts.js';
import { printedTimesOf, timesOfSubject } from '../tracing/subject-ranges.js';
import type { ThreadSubject } from '../tracing/thread.js';
import { fit, fitsOfSwaps, tierOf, type Finding, type Fit, type FitTier } from './finding.js';

/** A code that comes back after so long is another lot, whatever is printed. Our own value, no source. */
const sameLotWithinMilliseconds = 180 * 86_400_000;

/** So many of the latest lots are offered where a symbol names the item alone. */
const lotsOffered = 12;

type PackCode = Extract<Candidate, { readonly kind: 'pack-code' }>;

/** A lot that fits, the time on the pack, and why. */
interface LotFit {
  readonly lot: LotRow;
  readonly localTime: string | null;
  readonly fits: readonly Fit[];
  readonly tier: FitTier;
}

/** Reads lots of one site. */
export class LotFinder {
  constructor(
    private readonly from: ReadFrom,
    private readonly siteId: string,
    /** The time of day on the pack, where it was given apart from the code. */
    private readonly localTime: string | null,
  ) {}

  /** Lots whose whole code it is: as stored, then as each format's pattern reads it. */
  async byWholeCode(candidate: PackCode): Promise<readonly Finding[]> {
    const found = new Map<string, LotFit>();
    const time = this.localTime ?? candidate.localTime;
    const readings = asTypedFirst(candidate.readings);
    const keys = [candidate.codeKey, ...readings.map(({ reading }) => reading.lotKey)];
    const lots = await lotsByCodes(this.from, this.siteId, keys);
    for (const lot of lots.get(candidate.codeKey) ?? []) {
      found.set(lot.id, { lot, localTime: time, fits: [fit('fits-code')], tier: 'as-typed' });
    }
    for (const { formatId, reading } of readings) {
      for (const lot of lots.get(reading.lotKey) ?? []) {
        if (lot.formatId !== formatId || found.has(lot.id)) continue;
        const fits = [fit('fits-pattern', { format: lot.formatName }), ...fitsOfSwaps(reading.swaps)];
        found.set(lot.id, { lot, localTime: this.timeOf(candidate, reading), fits, tier: tierOf(reading.swaps) });
      }
    }
    return this.withTimes([...found.values()]);
  }

  /** Lots of whose code it is a part: the beginning by a pattern, the beginning, or somewhere inside. */
  async byPartOfCode(candidate: PackCode): Promise<readonly Finding[]> {
    const found = new Map<string, LotFit>();
    for (const { formatId, reading } of asTypedFirst(candidate.readings)) {
      const localTime = this.timeOf(candidate, reading);
      const own = (lots: readonly LotRow[]): readonly LotRow[] =>
        lots.filter((lot) => lot.formatId === formatId && !found.has(lot.id));
      const swaps = fitsOfSwaps(reading.swaps);
      const begin = own(await findLots(this.from, this.siteId, reading.lotKey, { prefix: true }));
      const inside =
        begin.length > 0 ? [] : own(await findLots(this.from, this.siteId, reading.lotKey, { inside: true }));
      for (const lot of begin)
        found.set(lot.id, { lot, localTime, fits: [fit('fits-begins'), ...swaps], tier: 'part' });
      for (const lot of inside)
        found.set(lot.id, { lot, localTime, fits: [fit('fits-inside'), ...swaps], tier: 'part' });
    }
    if (found.size === 0) {
      const localTime = this.localTime ?? candidate.localTime;
      for (const lot of await findLots(this.from, this.siteId, candidate.codeKey, { prefix: true })) {
        found.set(lot.id, { lot, localTime, fits: [fit('fits-begins')], tier: 'part' });
      }
    }
    return this.withTimes([...found.values()]);
  }

  /** By GTIN and lot of a symbol. */
  async byItem(gtin14: string, lotCode: string): Promise<readonly Finding[]> {
    const lots = await findLots(this.from, this.siteId, normaliseCode(lotCode));
    const own = lots.filter((lot) => lot.gtin === gtin14);
    const { localTime } = this;
    return this.withTimes(own.map((lot) => ({ lot, localTime, fits: [fit('fits-item')], tier: 'as-typed' })));
  }

  /** A symbol that names the item alone: its latest lots, to be chosen from. */
  async latestOfItem(gtin14: string): Promise<readonly Finding[]> {
    const lots = await lotsOfItem(this.from, this.siteId, gtin14, lotsOffered);
    const { localTime } = this;
    return this.withTimes(lots.map((lot) => ({ lot, localTime, fits: [fit('fits-item-only')], tier: 'part' })));
  }

  private timeOf(candidate: PackCode, reading: FormatReading['reading']): string | null {
    return this.localTime ?? reading.localTime ?? candidate.localTime;
  }

  private async withTimes(found: readonly LotFit[]): Promise<readonly Finding[]> {
    const findings: Finding[] = [];
    for (const one of found) findings.push(...(await this.uses(one)));
    return findings;
  }

  /** A lot is one finding; a code that came back years later is one for each time it was used. */
  private async uses(found: LotFit): Promise<readonly Finding[]> {
    const { lot } = found;
    const uses = clustered((await rangesOfLot(this.from, lot.id)).map((range) => range.changedAt).sort());
    const findings: Finding[] = [];
    for (const use of uses.length === 0 ? [null] : uses) {
      const codedBetween = uses.length > 1 ? use : null;
      const about = `${lot.formatName}${use === null ? '' : `, ${use.fromAt.slice(0, 10)}`}`;
      const subject: ThreadSubject = {
        ...{ kind: 'lot', id: lot.id, name: lot.code, localTime: found.localTime, printedAt: null, codedBetween },
      };
      findings.push(...(await this.comings({ subject, about, fits: found.fits, tier: found.tier, isDoubtful: false })));
    }
    return findings;
  }

  /**
   * A time of day that the plant's clock showed more than once while the lot was coded is one finding for each coming,
   * and one for whoever can't tell; one that no pack can carry is said to be so, and the whole lot is offered.
   */
  private async comings(finding: Finding): Promise<readonly Finding[]> {
    const { subject, fits } = finding;
    if (subject.localTime === null) return [finding];
    const times = await printedTimesOf(this.from, this.siteId, subject);
    const comings = [...new Set(times.map(({ printedAt }) => printedAt))].sort();
    const { timeZone } = await siteOf(this.from, this.siteId);
    if (comings.length === 1) return [finding];
    if (comings.length === 0) return [await this.outside(finding, timeZone)];
    return [
      ...comings.map((printedAt) => ({
        ...finding,
        subject: { ...subject, printedAt },
        fits: [...fits, fit('fits-coming', { at: clockText(timeZone, printedAt) })],
      })),
      { ...finding, fits: [...fits, fit('fits-any-coming', { count: comings.length })] },
    ];
  }

  private async outside(finding: Finding, timeZone: string): Promise<Finding> {
    const whole = { ...finding.subject, localTime: null };
    const span = await timesOfSubject(this.from, whole);
    const at = finding.subject.localTime ?? '';
    const outside =
      span === null
        ? fit('fits-not-counted', { at })
        : fit('fits-time-not-printed', {
            at,
            from: clockText(timeZone, span.fromAt),
            until: clockText(timeZone, span.untilAt),
          });
    return { ...finding, subject: whole, fits: [...finding.fits, outside], isDoubtful: true };
  }
}

/** Day, time and how far the plant's clock is ahead of UTC: `2026-10-25 02:30 UTC+01:00`. */
function clockText(timeZone: string, at: Instant): string {
  const text = localText(timeZone, at);
  return `${text.slice(0, 10)} ${text.slice(11, 16)} UTC${text.slice(19)}`;
}

function asTypedFirst(readings: readonly FormatReading[]): readonly FormatReading[] {
  return readings.toSorted((one, other) => one.reading.swaps.length - other.reading.swaps.length);
}

function clustered(instants: readonly Instant[]): { fromAt: Instant; untilAt: Instant }[] {
  const clusters: { fromAt: Instant; untilAt: Instant }[] = [];
  for (const at of instants) {
    const last = clusters.at(-1);
    if (last !== undefined && at < shifted(last.untilAt, sameLotWithinMilliseconds)) last.untilAt = at;
    else clusters.push({ fromAt: at, untilAt: at });
  }
  return clusters;
}
