import { makeBagNumber } from '../../src/core/identifiers/bag-number.js';
import { instantOf, type DemoShift, type Minute } from '../../src/demo/life/minutes.js';
import { methods } from '../../src/demo/set-up/set-up-goods.js';
import { Decision } from '../../src/disposition/decision.entity.js';
import { BagState } from '../../src/drying/bag-state.entity.js';
import { BagWeighing } from '../../src/drying/bag-weighing.entity.js';
import { BulkBag } from '../../src/drying/bulk-bag.entity.js';
import { DryerRunEnd } from '../../src/drying/dryer-run-end.entity.js';
import { DryerRun } from '../../src/drying/dryer-run.entity.js';
import { Result } from '../../src/laboratory/result.entity.js';
import { Sample } from '../../src/laboratory/sample.entity.js';
import type { History } from './history.js';

/** A full bag in the store. */
export interface StoredBag {
  readonly id: string;
  readonly netGrams: number;
  readonly filledAt: Minute;
}

const tareGrams = 1800;
const fillMinutes = 9;

/** Three dryers fill a bag every eleven minutes or so each; what waits in the store steers how fast. */
export class DryerHistory {
  readonly store: StoredBag[] = [];
  private readonly nextFilledAt = new Map<string, number>();

  constructor(
    private readonly history: History,
    private readonly size: { readonly bagsADay: number; readonly storeBagCount: number },
  ) {}

  shift(shift: DemoShift): void {
    for (const dryerId of this.history.plant.dryers) {
      this.fillBags(shift, dryerId);
      this.takeSamples(shift, dryerId);
    }
    this.store.sort((a, b) => a.filledAt - b.filledAt);
  }

  /** What was not tipped when history ends. */
  end(): void {
    for (const { id, netGrams, filledAt } of this.store) {
      const changedAt = instantOf(filledAt);
      this.history.sink.put(BagState, {
        bagId: id,
        status: 'full',
        remainingGrams: netGrams,
        placeId: null,
        changedAt,
      });
    }
  }

  private fillBags(shift: DemoShift, dryerId: string): void {
    const { history } = this;
    const run = this.newRun(shift, dryerId);
    const usual = (history.plant.dryers.length * 1440) / this.size.bagsADay;
    let at = Math.max(shift.from, this.nextFilledAt.get(dryerId) ?? shift.from);
    for (; at < shift.until; at += usual * this.pace()) {
      const filledAt = Math.floor(at);
      this.fillBag(filledAt, run);
    }
    this.nextFilledAt.set(dryerId, at);
  }

  /** Slower while the store is full, faster while it runs short. */
  private pace(): number {
    return Math.min(1.1, Math.max(0.9, this.store.length / this.size.storeBagCount));
  }

  private newRun(shift: DemoShift, dryerId: string): string {
    const { sink, numbers, plant } = this.history;
    const id = numbers.id(shift.from * 60_000);
    const number = numbers.document('dryer-run', 'DR', yearOf(shift.productionOn));
    const { siteId, gradeId } = plant;
    sink.put(DryerRun, {
      ...{ id, siteId, dryerId, gradeId, number },
      startedAt: instantOf(shift.from - fillMinutes - 1),
      voidedBy: null,
    });
    const endedAt = instantOf(shift.until - 1);
    sink.put(DryerRunEnd, { id: numbers.id(shift.until * 60_000), dryerRunId: id, endedAt, voidedBy: null });
    return id;
  }

  private fillBag(filledAt: Minute, dryerRunId: string): void {
    const { sink, numbers, plant, random } = this.history;
    const id = numbers.id((filledAt - fillMinutes) * 60_000);
    const netGrams = 1_000_000 + random.whole(-3000, 3000);
    const { siteId, gradeId, bagScaleId } = plant;
    sink.put(BulkBag, {
      ...{ id, siteId, number: makeBagNumber(numbers.take('bulk-bag')), sscc: numbers.sscc(), origin: 'dryer-run' },
      ...{
        dryerRunId,
        receiptId: null,
        intendedGradeId: gradeId,
        linerLot: linerLotOf(filledAt),
        safeLoadGrams: 1_250_000,
      },
      fillStartedAt: instantOf(filledAt - fillMinutes),
      voidedBy: null,
    });
    sink.put(BagWeighing, {
      ...{ id: numbers.id(filledAt * 60_000), bagId: id, occasion: 'filled', grossGrams: netGrams + tareGrams },
      ...{ tareGrams, netGrams, isPresetTare: false, scaleId: bagScaleId, weighedAt: instantOf(filledAt) },
      ...{ isDoubtful: false, personId: null, voidedBy: null },
    });
    const decidedAt = filledAt + 600;
    sink.put(Decision, {
      ...{ id: numbers.id(decidedAt * 60_000), siteId, subjectKind: 'bulk-bag', subjectId: id, verdict: 'released' },
      ...{ reason: null, decidedAt: instantOf(decidedAt), voidedBy: null },
    });
    this.store.push({ id, netGrams, filledAt });
  }

  /** Moisture of every hour, moisture and colour of the shift. */
  private takeSamples(shift: DemoShift, dryerId: string): void {
    for (let from = shift.from; from < shift.until; from += 60) {
      this.takeSample({ dryerId, from, until: Math.min(from + 60, shift.until), standsFor: 'hour' }, [
        'moisture-percent',
      ]);
    }
    const whole = { dryerId, from: shift.from, until: shift.until, standsFor: 'shift' } as const;
    this.takeSample(whole, ['moisture-percent', 'colour-iu']);
  }

  private takeSample(
    of: {
      readonly dryerId: string;
      readonly from: Minute;
      readonly until: Minute;
      readonly standsFor: 'hour' | 'shift';
    },
    properties: readonly (keyof typeof methods)[],
  ): void {
    const { sink, numbers, plant, random } = this.history;
    const { dryerId, from, until, standsFor } = of;
    const id = numbers.id(until * 60_000);
    const number = numbers.document('sample', 'S', new Date(until * 60_000).getUTCFullYear());
    sink.put(Sample, {
      ...{ id, siteId: plant.siteId, number, standsFor, bagId: null, dryerId },
      ...{ fromAt: instantOf(from), untilAt: instantOf(until), takenAt: instantOf(until), voidedBy: null },
    });
    for (const property of properties) {
      const amount = property === 'colour-iu' ? String(random.whole(18, 40)) : (0.03 + random.next() * 0.02).toFixed(3);
      sink.put(Result, {
        ...{ id: numbers.id((until + 60) * 60_000), sampleId: id, property, method: methods[property], amount },
        ...{ retestNumber: 0, analysedAt: instantOf(until + 60), voidedBy: null },
      });
    }
  }
}

/** A new lot of bags every week. */
const linerLotOf = (minute: Minute): string => `LN-${Math.floor(minute / 10_080)}`;

const yearOf = (on: string): number => Number(on.slice(0, 4));
