import { describe, expect, it } from '@jest/globals';
import { inOrderOfRisk, riskOfBag, riskOfHold, type DeskItem, type Risk } from './order-of-risk.js';

const item = (key: string, risk: Risk, since: string): DeskItem => ({
  ...{ key, risk, since, personId: null },
  sentence: { code: 'x', facts: {} },
  act: { code: 'x', href: '/' },
});

describe('the risk of an open hold', () => {
  it.each([
    ['without a class, nothing gone', null, 0, 0, 'safety-hold-without-class'],
    ['without a class, a pallet on a vehicle', null, 0, 1, 'safety-hold-away'],
    ['without a class, a pallet with a customer', null, 1, 0, 'safety-hold-away'],
    ['of safety, a pallet with a customer', 'safety', 1, 0, 'safety-hold-away'],
    ['of safety, all in store', 'safety', 0, 0, 'open-hold'],
    ['of quality, a pallet with a customer', 'quality', 3, 0, 'open-hold'],
  ] as const)('%s', (_, hazardSet, awayCount, onVehicleCount, risk) => {
    expect(riskOfHold({ hazardSet, awayCount, onVehicleCount })).toBe(risk);
  });
});

describe('the risk of a waiting bag', () => {
  it.each([
    ['outside and tipped', 'outside', true, true, 'result-outside-used'],
    ['outside, still full', 'outside', false, true, 'result-outside'],
    ['complete and within', 'complete-and-within', false, false, 'to-release'],
    ['complete and within, tipped meanwhile', 'complete-and-within', true, true, 'to-release'],
    ['tipped before its results', 'incomplete', true, true, 'tipped-at-risk'],
    ['tipped although only released ones are', 'incomplete', true, false, 'tipped-at-risk'],
    ['may be tipped at any time', 'incomplete', false, true, 'next-at-risk'],
    ['waits for the laboratory, and nobody may tip it', 'incomplete', false, false, null],
  ] as const)('%s', (_, laboratory, isUsed, isTippedAtRisk, risk) => {
    expect(riskOfBag({ laboratory, isUsed, isTippedAtRisk })).toBe(risk);
  });
});

describe('the order of what needs a decision', () => {
  it('puts the greater risk first, and within one the oldest', () => {
    const items = [
      item('release', 'to-release', '2026-03-01T00:00:00.000Z'),
      item('younger', 'result-outside', '2026-03-03T00:00:00.000Z'),
      item('older', 'result-outside', '2026-03-02T00:00:00.000Z'),
      item('away', 'safety-hold-away', '2026-03-04T00:00:00.000Z'),
      item('used', 'result-outside-used', '2026-03-05T00:00:00.000Z'),
    ];
    const order = inOrderOfRisk(items, 10).flatMap((group) => group.items.map(({ key }) => key));
    expect(order).toEqual(['away', 'used', 'older', 'younger', 'release']);
    expect(inOrderOfRisk([...items].reverse(), 10)).toEqual(inOrderOfRisk(items, 10));
  });

  it('shows not more of one risk than a person can look at, and counts the rest', () => {
    const items = ['a', 'b', 'c'].map((key, place) => item(key, 'point', `2026-03-0${place + 1}T00:00:00.000Z`));
    const [group] = inOrderOfRisk(items, 2);
    expect([group?.items.map(({ key }) => key), group?.moreCount]).toEqual([['a', 'b'], 1]);
    expect(inOrderOfRisk([], 2)).toEqual([]);
  });
});
