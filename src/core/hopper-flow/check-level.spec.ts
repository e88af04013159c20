import { describe, expect, it } from '@jest/globals';
import { checkLevel } from './check-level.js';
import { exactMass, massWithin, type HopperEvent } from './hopper-event.js';
import { followLevel, isLevelPossible, levelCourse } from './level-course.js';
import { leadOf, rankMistakes, suspectMistakes } from './level-suspects.js';
import { noTipMissingBefore } from './missing-tip-shown.js';
import { orderForLevelCheck } from './order-for-bounds.js';

const tip = (id: string, kg: number): HopperEvent => ({ kind: 'addition', id, mass: exactMass(kg * 1000) });
const packs = (id: string, kg: number): HopperEvent => ({ kind: 'exit', id, mass: exactMass(kg * 1000) });
const seen = (id: string, fromKg: number, toKg: number): HopperEvent => ({
  kind: 'level-seen',
  id,
  lowerGrams: fromKg * 1000,
  upperGrams: toKg * 1000,
});
const check = (capacityKg: number | null, ...events: HopperEvent[]) =>
  checkLevel({ capacityGrams: capacityKg === null ? null : capacityKg * 1000, events });

describe('the level through a hopper period', () => {
  it('adds the limits of all masses up', () => {
    const events: HopperEvent[] = [
      { kind: 'addition', id: 'bag', mass: massWithin(1000, 5) },
      { kind: 'exit', id: 'packs', mass: massWithin(300, 1) },
    ];
    expect(levelCourse({ capacityGrams: null, events }).points[1]).toEqual({
      eventIndex: 1,
      eventId: 'packs',
      lowerGrams: 694,
      grams: 700,
      upperGrams: 706,
    });
  });

  it('is shown event by event to whoever follows it', () => {
    const shown: number[] = [];
    const events: HopperEvent[] = [
      { kind: 'addition', id: 'bag', mass: massWithin(1000, 5) },
      { kind: 'exit', id: 'packs', mass: massWithin(1300, 1) },
    ];
    const findings = followLevel({ capacityGrams: null, events }, (_, __, { upperGrams }) => shown.push(upperGrams));
    expect(shown).toEqual([1005, -294]);
    expect(findings).toEqual([{ kind: 'below-zero', eventIndex: 1, eventId: 'packs', byGrams: 294 }]);
  });

  it('never has less than nothing inside, however light the bag and heavy the packs', () => {
    const events: HopperEvent[] = [
      { kind: 'addition', id: 'bag', mass: massWithin(1000, 50) },
      { kind: 'exit', id: 'packs', mass: massWithin(1000, 50) },
      { kind: 'addition', id: 'next', mass: massWithin(1000, 50) },
    ];
    const { points } = levelCourse({ capacityGrams: null, events });
    expect(points.map(({ lowerGrams, upperGrams }) => [lowerGrams, upperGrams])).toEqual([
      [950, 1050],
      [0, 100],
      [950, 1150],
    ]);
  });

  it('starts the limits anew at a level that was seen', () => {
    const events: HopperEvent[] = [
      { kind: 'addition', id: 'bag', mass: massWithin(1000, 50) },
      { kind: 'level-seen', id: 'probe', lowerGrams: 970, upperGrams: 980 },
    ];
    expect(levelCourse({ capacityGrams: null, events }).points[1]).toMatchObject({
      lowerGrams: 970,
      grams: 980,
      upperGrams: 980,
    });
  });

  it('finds nothing exactly at zero and exactly at the capacity', () => {
    const result = check(1000, tip('bag', 1000), packs('all', 1000));
    expect(result.findings).toEqual([]);
    expect(result.suspects).toEqual([]);
    expect(isLevelPossible({ capacityGrams: null, events: [] })).toBe(true);
    expect(check(null)).toEqual({ points: [], findings: [], suspects: [], lead: null });
    expect(suspectMistakes({ capacityGrams: null, events: [] }, [])).toEqual([]);
  });

  it('finds nothing that the limits of the masses explain', () => {
    const events: HopperEvent[] = [
      { kind: 'addition', id: 'bag', mass: massWithin(1000, 5) },
      { kind: 'exit', id: 'packs', mass: massWithin(1010, 5) },
    ];
    expect(checkLevel({ capacityGrams: null, events }).findings).toEqual([]);
  });
});

describe('records below zero', () => {
  const missing = check(
    2500,
    ...[tip('1', 1000), packs('a', 600), tip('2', 1000), packs('b', 900)],
    ...[packs('c', 700), packs('d', 500), tip('5', 1000), packs('e', 200)],
  );

  it('are found where they show first, with the most they come to', () => {
    expect(missing.findings).toEqual([{ kind: 'below-zero', eventIndex: 4, eventId: 'c', byGrams: 700_000 }]);
  });

  it('shows a plain case', () => {
    const events: HopperEvent[] = [
      { kind: 'addition', id: 'bag', mass: exactMass(1000) },
      { kind: 'exit', id: 'packs', mass: exactMass(1200) },
    ];
    expect(checkLevel({ capacityGrams: null, events }).findings).toEqual([
      { kind: 'below-zero', eventIndex: 1, eventId: 'packs', byGrams: 200 },
    ]);
  });

  it('are explained by a tip that stands after them, or by one that is missing, between where it fits and where it shows', () => {
    expect(missing.suspects[0]).toMatchObject({
      kind: 'tip-late',
      id: '5',
      grams: 1_000_000,
      byEventId: 'c',
      cures: true,
    });
    const skipped = missing.suspects.find(({ kind }) => kind === 'tip-missing');
    expect(skipped).toEqual({
      ...{ kind: 'tip-missing', id: null, grams: 700_000, afterEventId: null, byEventId: 'c' },
      ...{ cures: true, fit: 1, remainingGrams: 0, isTied: true },
    });
  });

  it('narrow the place of a missing tip by the capacity: at the latest one hopper-full later it shows', () => {
    const full = check(1500, ...[tip('1', 1000), packs('a', 900), tip('2', 1000), packs('b', 1000), packs('c', 1000)]);
    // 900 kg more would have overflowed with bag 2 (1100 + 900) until a part of it had left, so the tip was missed later.
    expect(full.findings).toEqual([{ kind: 'below-zero', eventIndex: 4, eventId: 'c', byGrams: 900_000 }]);
    expect(full.suspects.find(({ kind }) => kind === 'tip-missing')).toMatchObject({
      afterEventId: 'b',
      byEventId: 'c',
      cures: true,
    });
  });

  it('suspect a tare only where a few kilograms are missing', () => {
    const few = check(null, tip('1', 1000), packs('a', 1003), tip('2', 1000));
    expect(few.suspects.find(({ kind }) => kind === 'wrong-tare')?.fit).toBeCloseTo(47 / 50, 4);
    expect(missing.suspects.map(({ kind }) => kind)).not.toContain('wrong-tare');
  });

  it('are laid to a tare alone where the hopper was then seen to hold what the rest makes it', () => {
    const few = check(null, tip('1', 1000), packs('a', 1003), seen('proven empty', 0, 2));
    expect(few.suspects.map(({ kind }) => kind)).toEqual(['wrong-tare', 'empty-was-none', 'exits-too-many']);
    expect(few.lead).toBeGreaterThan(10);
    expect(few.suspects.map(({ isTied }) => isTied)).toEqual([false, false, false]);
  });

  it('name the tip that was entered at another hopper, where somebody looked there', () => {
    const events = [tip('1', 1000), packs('a', 1600), seen('probe', 380, 400)];
    const there = [tip('there 1', 1000), tip('there 2', 940)].filter((event) => event.kind === 'addition');
    const { suspects } = checkLevel({ capacityGrams: null, events }, there);
    expect(suspects.find(({ kind }) => kind === 'wrong-hopper')).toMatchObject({ id: 'there 1', fit: 0.5 });
    expect(checkLevel({ capacityGrams: null, events }, []).suspects.map(({ kind }) => kind)).not.toContain(
      'wrong-hopper',
    );
    // Where nobody looked, a tip that was not entered and one entered elsewhere are the same.
    const unseen = checkLevel({ capacityGrams: null, events });
    expect(unseen.suspects.slice(0, 2)).toMatchObject([
      { kind: 'tip-missing', fit: 1, isTied: true },
      { kind: 'wrong-hopper', fit: 1, isTied: true },
    ]);
    expect(unseen.lead).toBe(1);
  });

  it('rank every kind of mistake with what it leaves', () => {
    const events = [tip('1', 1000), packs('a', 1300), seen('proven empty', 0, 2)];
    const period = { capacityGrams: null, events };
    const ranked = rankMistakes(period, levelCourse(period).findings);
    expect(ranked.map(({ kind, cures, remainingGrams }) => [kind, cures, remainingGrams])).toEqual([
      ['empty-was-none', true, 0],
      ['exits-too-many', true, 0],
      ['wrong-tare', false, 250_000],
      ['tip-missing', false, 698_000],
      ['wrong-hopper', false, 698_000],
    ]);
    expect(rankMistakes(period, [])).toEqual([]);
    expect(leadOf([])).toBeNull();
  });

  it('say so when no single mistake explains everything', () => {
    const twice = check(null, tip('1', 100), packs('a', 300), seen('probe', 0, 5), packs('b', 50));
    expect(twice.findings.map(({ byGrams }) => byGrams)).toEqual([200_000, 45_000]);
    expect(twice.suspects.every(({ cures }) => !cures)).toBe(true);
  });
});

describe('records above the capacity', () => {
  it('name the tip that was entered twice', () => {
    const over = check(1400, tip('1', 990), packs('a', 700), tip('2', 1003), packs('b', 800), tip('2 again', 1003));
    expect(over.findings).toEqual([{ kind: 'above-capacity', eventIndex: 4, eventId: '2 again', byGrams: 96_000 }]);
    expect(over.suspects[0]).toMatchObject({ kind: 'tip-entered-twice', id: '2 again', grams: 1_003_000, cures: true });
  });

  it('name no bag where all weigh the same, and suspect packs that were not counted', () => {
    const tips = Array.from({ length: 8 }, (_, index) => tip(String(index), 100));
    const result = check(750, ...tips);
    expect(result.suspects.map(({ kind, id }) => [kind, id])).toEqual([
      ['tip-entered-twice', null],
      ['wrong-hopper', null],
      ['exits-missing', null],
    ]);
    expect(result.suspects.map(({ isTied }) => isTied)).toEqual([true, true, true]);
    expect(result.suspects[2]).toMatchObject({ grams: 50_000, cures: true });
  });

  it('are no finding while intervals of time explain them', () => {
    const at = (earliestAt: number, latestAt: number) => ({ earliestAt, likelyAt: latestAt, latestAt });
    const events = [
      { event: tip('1', 1000) as never, ...at(0, 0) },
      { event: packs('a', 900) as never, ...at(0, 60) },
      { event: tip('2', 1000) as never, ...at(30, 30) },
    ];
    expect(checkLevel(orderForLevelCheck({ capacityGrams: 1_200_000, events })).findings).toEqual([]);
    const later = [...events.slice(0, 2), { event: tip('2', 1000) as never, ...at(61, 61) }];
    expect(checkLevel(orderForLevelCheck({ capacityGrams: 1_000_000, events: later })).findings).toEqual([
      { kind: 'above-capacity', eventIndex: 5, eventId: '2', byGrams: 100_000 },
    ]);
  });
});

describe('records away from what was seen', () => {
  it('question an empty at a level far from zero', () => {
    const result = check(null, tip('1', 1000), packs('a', 400), seen('proven empty', 0, 2));
    expect(result.findings).toEqual([{ kind: 'above-seen', eventIndex: 2, eventId: 'proven empty', byGrams: 598_000 }]);
    expect(result.suspects).toMatchObject([
      { kind: 'exits-missing', id: null, grams: 598_000, afterEventId: '1', byEventId: 'proven empty', isTied: true },
      { kind: 'empty-was-none', id: 'proven empty', grams: 598_000, afterEventId: 'a', isTied: true },
    ]);
    expect(result.lead).toBe(1);
  });

  it('name the one tip that was too many, where no other can be', () => {
    const result = check(null, tip('1', 600), tip('2', 1000), packs('a', 600), seen('proven empty', 0, 2));
    expect(result.suspects.map(({ kind, id, cures }) => [kind, id, cures])).toEqual([
      ['wrong-hopper', '2', true],
      ['exits-missing', null, true],
      ['empty-was-none', 'proven empty', true],
    ]);
    // One of two tips fits, but only a thousandth of what packs that nobody counted may come to.
    expect(result.lead).toBeGreaterThan(100);
  });

  it('say by how much less the records make it', () => {
    const result = check(null, tip('1', 1000), packs('a', 400), seen('probe', 900, 950), tip('2', 1000));
    expect(result.findings).toEqual([{ kind: 'below-seen', eventIndex: 2, eventId: 'probe', byGrams: 300_000 }]);
    expect(result.points[2]).toMatchObject({ lowerGrams: 900_000, grams: 900_000, upperGrams: 950_000 });
  });
});

describe('a missing tip', () => {
  const bag = [tip('1', 1000), packs('a', 1000)];

  it('must have shown once the hopper was seen empty', () => {
    const events = [...bag, seen('proven empty', 0, 2)];
    expect(noTipMissingBefore({ capacityGrams: null, events }, 10_000)).toBe(3);
    expect(noTipMissingBefore({ capacityGrams: null, events }, 2_000)).toBe(0);
  });

  it('must have shown where it would have overflowed, and not later', () => {
    const events = [...bag, tip('2', 900), packs('b', 500), tip('3', 300)];
    expect(noTipMissingBefore({ capacityGrams: 1_500_000, events }, 700_000)).toBe(4);
    expect(noTipMissingBefore({ capacityGrams: 1_500_000, events }, 1_200_000)).toBe(5);
    expect(noTipMissingBefore({ capacityGrams: null, events }, 1_200_000)).toBe(0);
  });
});
