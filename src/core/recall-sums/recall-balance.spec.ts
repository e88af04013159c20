import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { overRecallFactor, recallBalance, recallRates, type RecallAmounts } from './recall-balance.js';

const none: RecallAmounts = {
  produced: 0,
  inStore: 0,
  onDock: 0,
  onVehicle: 0,
  dispatched: 0,
  rejects: 0,
  samples: 0,
  retained: 0,
  scrapped: 0,
};

describe('the sums of a recall', () => {
  // Worked example of the plant's own notes on traceability metrics (quality notes, section 3; computed there, no published source).
  it('keeps accounted, recovered and closed out apart', () => {
    const balance = recallBalance({ ...none, produced: 23_760, inStore: 3_120, dispatched: 20_600, retained: 40 });
    expect(balance.accountedPercent).toBe(100);
    expect(balance.verdict).toBe('adds-up');
    const rates = recallRates({
      dispatched: 20_600,
      returned: 14_210,
      destroyedAtCustomer: 880,
      confirmedSold: 4_700,
    });
    expect(rates.recoveryPercent).toBe(73.25);
    expect(rates.closedOutPercent).toBe(96.07);
    expect(rates.openAtCustomers).toBe(810);
  });

  it('names what is missing and puts it nowhere else', () => {
    const amounts = {
      ...{ produced: 100, inStore: 50, onDock: 6, onVehicle: 4, dispatched: 30 },
      ...{ rejects: 2, samples: 1, retained: 1, scrapped: 0 },
    };
    expect(recallBalance(amounts)).toEqual({
      ...amounts,
      ...{ held: 60, usedUp: 4, found: 94, unaccounted: 6, accountedPercent: 94, verdict: 'some-unaccounted' },
    });
  });

  it('says that more was found than produced, and clips nothing', () => {
    const balance = recallBalance({ ...none, produced: 1_000, inStore: 1_001 });
    expect(balance).toMatchObject({
      unaccounted: -1,
      accountedPercent: 100.1,
      verdict: 'more-found-than-produced',
    });
  });

  it('says that customers answered for more than they got', () => {
    const rates = recallRates({ dispatched: 10, returned: 11, destroyedAtCustomer: 0, confirmedSold: 0 });
    expect(rates).toEqual({ recoveryPercent: 110, closedOutPercent: 110, openAtCustomers: -1, isContradiction: true });
  });

  it('has no share of nothing', () => {
    expect(recallBalance(none)).toMatchObject({ unaccounted: 0, accountedPercent: null, verdict: 'adds-up' });
    expect(recallRates({ dispatched: 0, returned: 0, destroyedAtCustomer: 0, confirmedSold: 0 })).toMatchObject({
      recoveryPercent: null,
      closedOutPercent: null,
      isContradiction: false,
    });
  });

  it('calls a share short of the whole 100 only where rounding to two decimals does', () => {
    expect(recallBalance({ ...none, produced: 10_000, inStore: 9_999 }).accountedPercent).toBe(99.99);
    expect(recallBalance({ ...none, produced: 1_000_000, inStore: 999_999 })).toMatchObject({
      accountedPercent: 100,
      verdict: 'some-unaccounted',
    });
  });

  it('says how many times too much is recalled', () => {
    expect(overRecallFactor(19_800_000, 996_500)).toBe(19.87);
    expect(overRecallFactor(996_500, 996_500)).toBe(1);
    expect(overRecallFactor(996_500, 0)).toBeNull();
    expect(overRecallFactor(996_500, null)).toBeNull();
  });

  it('needs whole amounts', () => {
    expect(() => recallBalance({ ...none, produced: -1 })).toThrow('produced must be whole, 0 or more, not -1');
    expect(() => recallRates({ dispatched: 0.5, returned: 0, destroyedAtCustomer: 0, confirmedSold: 0 })).toThrow(
      'dispatched',
    );
    expect(() => overRecallFactor(-1, 5)).toThrow('recalledGrams');
  });

  it('always gives back what was produced when its parts are added up', () => {
    const amount = fc.nat({ max: 1_000_000_000 });
    const keys = Object.keys(none) as (keyof RecallAmounts)[];
    const amounts = fc.record(
      Object.fromEntries(keys.map((key) => [key, amount])) as never,
    ) as fc.Arbitrary<RecallAmounts>;
    fc.assert(
      fc.property(amounts, (some) => {
        const { held, dispatched, usedUp, unaccounted, verdict } = recallBalance(some);
        expect(held + dispatched + usedUp + unaccounted).toBe(some.produced);
        expect(verdict === 'more-found-than-produced').toBe(unaccounted < 0);
      }),
    );
  });
});
