import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { type PackagingCounts, packagingBalance } from './packaging-balance.js';

const counts: PackagingCounts = {
  openingCount: 350,
  issuedCount: 12_000,
  returnedCount: 412,
  goodCount: 11_780,
  rejectCount: 96,
  sampleCount: 24,
  damagedCount: 31,
  setUpCount: 0,
};
const none: PackagingCounts = {
  openingCount: 0,
  issuedCount: 0,
  returnedCount: 0,
  goodCount: 0,
  rejectCount: 0,
  sampleCount: 0,
  damagedCount: 0,
  setUpCount: 0,
};

describe('the balance of packaging', () => {
  it('says how many pieces cannot be accounted for', () => {
    expect(packagingBalance(counts)).toEqual({
      usedCount: 11_938,
      accountedCount: 11_931,
      unaccountedCount: 7,
      unaccountedPercent: 0.0586,
    });
  });

  it('goes below zero where more was found than can have been used', () => {
    expect(packagingBalance({ ...counts, goodCount: 11_800 }).unaccountedCount).toBe(-13);
  });

  it('has no percentage where none was used', () => {
    expect(packagingBalance(none)).toMatchObject({ usedCount: 0, unaccountedCount: 0, unaccountedPercent: null });
    expect(packagingBalance({ ...none, returnedCount: 5 })).toMatchObject({ usedCount: -5, unaccountedPercent: null });
  });

  it('needs whole counts', () => {
    expect(() => packagingBalance({ ...none, issuedCount: -1 })).toThrow('issuedCount');
    expect(() => packagingBalance({ ...none, sampleCount: 0.5 })).toThrow('sampleCount');
  });
});

describeWithChecks('the balance of packaging against the worked example', () => {
  it('agrees in pieces and percent', () => {
    const { bag_reconciliation: reconciliation } = readChecks<{
      bag_reconciliation: { example: Readonly<Record<string, number>> };
    }>('quality/packing_practice.json');
    const count = (name: string): number => reconciliation.example[name] ?? NaN;
    const balance = packagingBalance({
      openingCount: count('opening'),
      issuedCount: count('issued'),
      returnedCount: count('returned'),
      goodCount: count('good'),
      rejectCount: count('rejects'),
      sampleCount: count('samples'),
      damagedCount: count('damaged'),
      setUpCount: count('setup'),
    });
    expect(balance.unaccountedCount).toBe(count('unaccounted'));
    expect(balance.unaccountedPercent).toBe(count('unaccounted_pct_of_used'));
  });
});
