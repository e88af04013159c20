import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import {
  boundEveryAdditionInTarget,
  boundGroupInTarget,
  boundGroupInTargets,
  boundsOfGroup,
  boundGroupsInTarget,
} from './bound-group-in-target.js';
import { followEachElsewhere, followElsewhere, followUntil } from './before-target.js';
import { boundLayout, layOut } from './bound-layout.js';
import { flowFirstInFirstOut } from './first-in-first-out.js';
import { placeGroup, wholeAdditions, type GroupContent } from './group-content.js';
import { exactMass, massWithin, type HopperEvent } from './hopper-event.js';
import { likelySourcesOf } from './likely-flow.js';
import { prepareHopperPeriod } from './prepare-period.js';
import { passSixNumbers } from './six-number-pass.js';
import { exitGrams, exitsIn, mergeExits, placeTarget, type Membership } from './target-steps.js';

const tip = (id: string, kg: number): HopperEvent => ({ kind: 'addition', id, mass: exactMass(kg * 1000) });
const packs = (id: string, kg: number): HopperEvent => ({ kind: 'exit', id, mass: exactMass(kg * 1000) });
const ranDown = (kg: number): HopperEvent => ({
  kind: 'level-seen',
  id: 'ran down',
  lowerGrams: 0,
  upperGrams: kg * 1000,
});
const prepare = (...events: HopperEvent[]) => prepareHopperPeriod({ capacityGrams: null, events });
const kilograms = (least: number, most: number) => ({
  leastGrams: least * 1000,
  mostGrams: most * 1000,
  contradiction: null,
});

describe('a bag of 996 kg, poured on another, of which lot A takes 300 kg, lot B 2000 kg, until the hopper is empty', () => {
  const poured = [tip('older', 1000), tip('bag', 996)];
  const period = prepare(...poured, packs('lot A', 300), tip('next', 304), packs('lot B', 2000));
  const bag = wholeAdditions(['bag']);

  it('is surely in lot B with 696 kg, and at most whole', () => {
    expect(boundGroupInTarget(period, bag, exitsIn(['lot B']))).toEqual(kilograms(696, 996));
  });

  it('is in lot A with anything up to the 300 kg of it', () => {
    expect(boundGroupInTarget(period, bag, exitsIn(['lot A']))).toEqual(kilograms(0, 300));
  });

  it('is in lot A with just 300 kg where nothing else was inside', () => {
    const alone = prepare(tip('bag', 996), packs('lot A', 300), tip('next', 1304), packs('lot B', 2000));
    expect(boundGroupInTarget(alone, bag, exitsIn(['lot A']))).toEqual(kilograms(300, 300));
    expect(boundGroupInTarget(alone, bag, exitsIn(['lot B']))).toEqual(kilograms(696, 696));
  });

  it('gives the same answer asked one by one, for several bags, and for several targets', () => {
    expect(boundGroupsInTarget(period, [bag, wholeAdditions([])], exitsIn(['lot A']))).toEqual([
      kilograms(0, 300),
      kilograms(0, 0),
    ]);
    const boundsIn = boundsOfGroup(period, bag);
    expect(['lot B', 'lot A'].map((lot) => boundsIn(exitsIn([lot])))).toEqual([kilograms(696, 996), kilograms(0, 300)]);
    expect(boundGroupInTargets(period, bag, [exitsIn(['lot A']), exitsIn(['lot B'])])).toEqual([
      kilograms(0, 300),
      kilograms(696, 996),
    ]);
    expect(boundEveryAdditionInTarget(period, exitsIn(['lot A']))).toEqual([
      { additionId: 'older', ...kilograms(0, 300) },
      { additionId: 'bag', ...kilograms(0, 300) },
      { additionId: 'next', ...kilograms(0, 0) },
    ]);
  });
});

describe('a hopper that ran down to 40 kg', () => {
  const period = prepare(
    ...[tip('old 1', 1000), tip('old 2', 500), packs('before', 1400), ranDown(40)],
    ...[tip('new', 1000), packs('after', 900)],
  );

  it('lets at most 40 kg of all that is older through', () => {
    const old = wholeAdditions(['old 1', 'old 2']);
    expect(prepare(tip('old', 1500), packs('before', 1400), ranDown(40)).contradiction?.byGrams).toBe(60_000);
    const light = prepare(
      ...[tip('old 1', 1000), tip('old 2', 500), packs('before', 1400), packs('sweepings', 60), ranDown(40)],
      ...[tip('new', 1000), packs('after', 900)],
    );
    expect(boundGroupInTarget(light, old, exitsIn(['after']))).toEqual(kilograms(0, 40));
    expect(period.contradiction).not.toBeNull();
  });

  it('does so too where the masses leave it open how much was inside', () => {
    const mass = (kg: number, limitKg: number) => massWithin(kg * 1000, limitKg * 1000);
    const doubtful = prepare(
      { kind: 'addition', id: 'old', mass: mass(1500, 0) },
      { kind: 'exit', id: 'before', mass: mass(1400, 70) },
      ranDown(40),
      tip('new', 1000),
      packs('after', 900),
    );
    expect(boundGroupInTarget(doubtful, wholeAdditions(['old']), exitsIn(['after']))).toEqual(kilograms(0, 40));
    expect(boundGroupInTarget(doubtful, wholeAdditions(['new']), exitsIn(['after']))).toEqual(kilograms(860, 900));
  });
});

describe('doubt about the records', () => {
  it('counts a perhaps in the target for most, and not for least', () => {
    const period = prepare(tip('bag', 100), packs('14:31', 30), packs('14:32', 30), packs('rest', 40));
    const target = new Map<string, Membership>([
      ['14:31', 'maybe'],
      ['14:32', 'in'],
      ['rest', 'out'],
    ]);
    expect(boundGroupInTarget(period, wholeAdditions(['bag']), target)).toEqual(kilograms(30, 60));
  });

  it('carries a rework bin of which 10 to 25 kg are of the group', () => {
    const period = prepare(tip('rework bin', 50), packs('all', 50));
    const group: GroupContent = new Map([['rework bin', { lowerGrams: 10_000, upperGrams: 25_000 }]]);
    expect(boundGroupInTarget(period, group, exitsIn(['all']))).toEqual(kilograms(10, 25));
  });

  it('takes no more content than the addition holds', () => {
    const period = prepare(tip('rework bin', 50), packs('all', 50));
    const group: GroupContent = new Map([['rework bin', { lowerGrams: 60_000, upperGrams: 70_000 }]]);
    expect(boundGroupInTarget(period, group, exitsIn(['all']))).toEqual(kilograms(50, 50));
  });

  it('calls a bag that may be one of several possible, never sure', () => {
    const period = prepare(tip('number not read', 1000), packs('all', 1000));
    const candidate: GroupContent = new Map([['number not read', { lowerGrams: 0, upperGrams: 1_000_000 }]]);
    expect(boundGroupInTarget(period, candidate, exitsIn(['all']))).toEqual(kilograms(0, 1000));
  });

  it('does not let the doubt about the group itself add up: all bags are surely in what left', () => {
    const events: HopperEvent[] = Array.from({ length: 50 }, (_, index) => ({
      kind: 'addition',
      id: String(index),
      mass: massWithin(1_000_000, 2_000),
    }));
    const all = wholeAdditions(events.map(({ id }) => id));
    const period = prepare(...events, { kind: 'exit', id: 'packs', mass: massWithin(45_000_000, 10_000) });
    expect(boundGroupInTarget(period, all, exitsIn(['packs']))).toEqual(kilograms(44_990, 45_010));
  });

  it('takes the capacity as the most that can be inside', () => {
    const events = [tip('bag', 100), packs('first', 90), tip('next', 90), packs('second', 95)];
    const group = wholeAdditions(['bag']);
    const low = (capacityGrams: number | null) =>
      boundGroupInTarget(prepareHopperPeriod({ capacityGrams, events }), group, exitsIn(['second'])).mostGrams;
    expect([low(null), low(100_000)]).toEqual([10_000, 10_000]);
    const doubtful: HopperEvent[] = [
      tip('bag', 100),
      { kind: 'exit', id: 'first', mass: massWithin(50_000, 40_000) },
      tip('next', 90),
      packs('second', 50),
    ];
    const most = (capacityGrams: number | null) =>
      boundGroupInTarget(prepareHopperPeriod({ capacityGrams, events: doubtful }), group, exitsIn(['first']));
    expect([most(null).leastGrams, most(100_000).leastGrams]).toEqual([10_000, 10_000]);
    const two = wholeAdditions(['bag', 'next']);
    const leastOfTwo = (capacityGrams: number | null) =>
      boundGroupInTarget(prepareHopperPeriod({ capacityGrams, events: doubtful }), two, exitsIn(['first'])).leastGrams;
    expect([leastOfTwo(null), leastOfTwo(100_000)]).toEqual([10_000, 90_000]);
  });
});

describe('records that cannot be true', () => {
  it('make nothing sure, and say where they contradict each other and by how much', () => {
    const period = prepare(tip('bag', 100), packs('too much', 130), tip('next', 50), packs('after', 40));
    const contradiction = { eventIndex: 1, eventId: 'too much', byGrams: 30_000 };
    expect(period.contradiction).toEqual(contradiction);
    expect(boundGroupInTarget(period, wholeAdditions(['bag']), exitsIn(['too much', 'after']))).toEqual({
      leastGrams: 0,
      mostGrams: 100_000,
      contradiction,
    });
    expect(boundGroupInTarget(period, wholeAdditions(['next']), exitsIn(['too much']))).toMatchObject({ mostGrams: 0 });
  });

  it('are doubtful also before the place where it shows', () => {
    const period = prepare(tip('bag', 100), packs('packs', 100), packs('of nothing', 1));
    expect(boundGroupInTarget(period, wholeAdditions(['bag']), exitsIn(['packs']))).toMatchObject({
      leastGrams: 0,
      mostGrams: 100_000,
      contradiction: { eventId: 'of nothing' },
    });
  });
});

describe('the steps of an answer', () => {
  const period = prepare(tip('bag', 100), packs('packs', 30));
  const parts = placeGroup(period, wholeAdditions(['bag']));
  const before = followElsewhere(period, parts, 1);

  it('start with what is known before the target, alike for a group and for each bag', () => {
    expect(before(1)).toEqual({
      pouredLowerGrams: 100_000,
      pouredUpperGrams: 100_000,
      leftLowerGrams: 0,
      leftUpperGrams: 0,
      mustHaveLeftGrams: 0,
    });
    const [bag] = parts;
    if (bag === undefined) throw new Error('the bag went in');
    expect(followEachElsewhere(period, 1)(bag)).toEqual(before(1));
    expect(followUntil(period, parts, 1)).toEqual(before(1));
    expect(() => before(0)).toThrow(RangeError);
    expect(() => followEachElsewhere(period, 0)(bag)).toThrow(RangeError);
    expect(() => followUntil(period, parts, 0)).toThrow(RangeError);
  });

  it('know the same whichever way a group is followed, also where only a part of an addition is of it', () => {
    const grams = fc.integer({ min: 0, max: 1200 });
    const mass = fc.tuple(grams, fc.integer({ min: 0, max: 50 })).map(([middle, limit]) => massWithin(middle, limit));
    const event = fc.oneof(
      { weight: 4, arbitrary: fc.record({ kind: fc.constant('addition' as const), mass }) },
      { weight: 3, arbitrary: fc.record({ kind: fc.constant('exit' as const), mass }) },
      {
        weight: 1,
        arbitrary: grams.map((upperGrams) => ({
          kind: 'level-seen' as const,
          lowerGrams: 0,
          upperGrams: upperGrams * 3,
        })),
      },
    );
    const share = fc.tuple(grams, grams).map(([one, other]) => ({
      ...{ lowerGrams: Math.min(one, other), upperGrams: Math.max(one, other) },
    }));
    const asked = fc.record({
      events: fc.array(event, { minLength: 2, maxLength: 25 }),
      capacityGrams: fc.option(fc.integer({ min: 800, max: 3000 })),
      shares: fc.array(share, { minLength: 25, maxLength: 25 }),
    });
    let comparedCount = 0;
    fc.assert(
      fc.property(asked, ({ events, capacityGrams, shares }) => {
        const named = events.map((one, place): HopperEvent => ({ ...one, id: String(place) }));
        const generated = prepareHopperPeriod({ capacityGrams, events: named });
        // Where the records can't be true, what levels say of a group is not believed, and not the same.
        if (generated.contradiction !== null) return;
        for (const [id, cutIndex] of generated.cutIndexByAdditionId) {
          const group = placeGroup(generated, new Map([[id, shares[Number(id)] ?? 'whole']]));
          const [only] = group;
          const first = (generated.cuts[cutIndex]?.eventIndex ?? 0) + 1;
          const known = followElsewhere(generated, group, named.length);
          for (let index = first; index < named.length && only !== undefined; index += 1) {
            expect(followEachElsewhere(generated, index)(only)).toEqual(known(index));
            expect(followUntil(generated, group, index)).toEqual(known(index));
            comparedCount += 1;
          }
        }
      }),
      { numRuns: 3000, seed: 20_261_130 },
    );
    expect(comparedCount).toBeGreaterThan(3_000);
  });

  it('go on with the pass through the target', () => {
    const start = { target: mergeExits(period, [1]), startStep: 0 };
    expect(passSixNumbers(start, before(1), [], 'believed')).toEqual({
      leastGrams: 30_000,
      mostGrams: 30_000,
      leftElsewhereUpperGrams: 0,
      pouredLowerGrams: 100_000,
    });
    expect(passSixNumbers(start, before(1), [], 'disbelieved')).toMatchObject({ leastGrams: 0, mostGrams: 30_000 });
  });

  it('lay nothing out for nothing', () => {
    const empty = prepare();
    const layout = layOut(empty, new Map());
    expect(layout.possible.steps).toEqual([]);
    expect(exitGrams(empty, 0, 0)).toEqual({ lowerGrams: 0, upperGrams: 0 });
    expect(boundLayout({ period: empty, parts: [], layout, before, tightestAfter: () => -Infinity })).toEqual(
      kilograms(0, 0),
    );
  });
});

describe('questions that make no sense', () => {
  const period = prepare(tip('bag', 100), packs('packs', 30));

  it('are refused', () => {
    expect(() => boundGroupInTarget(period, wholeAdditions(['other']), exitsIn(['packs']))).toThrow(/other/);
    expect(() => boundGroupInTarget(period, wholeAdditions(['bag']), exitsIn(['other']))).toThrow(/other/);
    const reversed: GroupContent = new Map([['bag', { lowerGrams: 2, upperGrams: 1 }]]);
    expect(() => boundGroupInTarget(period, reversed, exitsIn(['packs']))).toThrow(RangeError);
  });

  it('are answered with nothing where there is nothing', () => {
    const empty = prepare();
    expect(empty.contradiction).toBeNull();
    expect(placeGroup(empty, new Map())).toEqual([]);
    expect(placeTarget(empty, new Map(), 'with-maybe')).toEqual([]);
    expect(mergeExits(empty, []).steps).toEqual([]);
    expect(boundGroupInTarget(period, wholeAdditions(['bag']), exitsIn([]))).toEqual(kilograms(0, 0));
    expect(wholeAdditions(['bag 4711'])).toEqual(new Map([['bag 4711', 'whole']]));
    expect(exitsIn(['pallet 12'])).toEqual(new Map([['pallet 12', 'in']]));
  });
});

interface BoundsCase {
  readonly events: readonly (
    { type: 'addition'; bag: number; kg: number } | { type: 'exit'; line: number; kg: number }
  )[];
  readonly target: readonly number[];
  readonly expected: readonly { readonly bags: readonly number[]; readonly leastKg: number; readonly mostKg: number }[];
}

describeWithChecks('bounds against the linear programmes of quality/hopper_bounds.json', () => {
  it('agree to the gram in all 80 periods and 608 groups', () => {
    const { cases } = readChecks<{ cases: readonly BoundsCase[] }>('quality/hopper_bounds.json');
    let compared = 0;
    for (const { events, target, expected } of cases) {
      const period = prepare(
        ...events.map((event, index) =>
          event.type === 'addition' ? tip(`bag ${event.bag}`, event.kg) : packs(String(index), event.kg),
        ),
      );
      const exits = exitsIn(target.map(String));
      const single = new Map(boundEveryAdditionInTarget(period, exits).map((bounds) => [bounds.additionId, bounds]));
      for (const { bags, leastKg, mostKg } of expected) {
        const names = bags.map((bag) => `bag ${bag}`);
        expect(boundGroupInTarget(period, wholeAdditions(names), exits)).toEqual(kilograms(leastKg, mostKg));
        if (names.length === 1) expect(single.get(names[0]!)).toMatchObject(kilograms(leastKg, mostKg));
        compared += 1;
      }
    }
    expect([cases.length, compared]).toEqual([80, 608]);
  });
});

interface Drawn {
  readonly events: readonly HopperEvent[];
  readonly target: ReadonlyMap<string, Membership>;
  readonly group: GroupContent;
}

/** Periods that a hopper can go through: no exit takes more than is inside. Limits of 0 keep masses exact. */
const drawPeriod = (limitUpTo: number): fc.Arbitrary<Drawn> =>
  fc
    .array(
      fc.record({
        isTip: fc.boolean(),
        grams: fc.integer({ min: 1, max: 60 }),
        tenths: fc.integer({ min: 1, max: 10 }),
        limit: fc.nat(limitUpTo),
        isOfQuestion: fc.boolean(),
        isLevel: fc.nat(9).map((draw) => draw === 0),
      }),
      { minLength: 2, maxLength: 24 },
    )
    .map((drawn) => {
      let inside = 0;
      const events: HopperEvent[] = [];
      const target = new Map<string, Membership>();
      const group = new Map<string, 'whole'>();
      drawn.forEach(({ isTip, grams, tenths, limit, isOfQuestion, isLevel }, index) => {
        const id = String(index);
        if (isLevel)
          events.push({ kind: 'level-seen', id, lowerGrams: Math.max(0, inside - limit), upperGrams: inside + limit });
        else if (isTip || inside === 0) {
          inside += grams;
          events.push({ kind: 'addition', id, mass: massWithin(grams, limit) });
          if (isOfQuestion) group.set(id, 'whole');
        } else {
          const taken = Math.ceil((inside * tenths) / 10);
          inside -= taken;
          events.push({ kind: 'exit', id, mass: massWithin(taken, limit) });
          if (isOfQuestion) target.set(id, 'in');
        }
      });
      return { events, target, group };
    });

/** The pass as the note writes it: every exit on its own, no early end. `keep` carries M − level along instead (see six-number-pass). */
function passAsWritten({ events, target, group }: Drawn, level: 'as-written' | 'carried'): readonly [number, number] {
  let [aL, aU, bL, bU, sL, sU] = [0, 0, 0, 0, 0, 0];
  let [pouredLower, pouredUpper, levelUpper, carried] = [0, 0, 0, 0];
  for (const event of events) {
    if (event.kind === 'addition') {
      levelUpper += event.mass.upperGrams;
      if (group.has(event.id)) {
        pouredLower += event.mass.lowerGrams;
        pouredUpper += event.mass.upperGrams;
      } else carried -= event.mass.upperGrams;
    } else if (event.kind === 'exit') {
      levelUpper -= event.mass.lowerGrams;
      carried += event.mass.lowerGrams;
      sU += event.mass.upperGrams;
      if (target.has(event.id)) aU += event.mass.upperGrams;
      else bU += event.mass.upperGrams;
    } else {
      levelUpper = Math.min(levelUpper, event.upperGrams);
      carried = Math.max(carried, pouredLower - event.upperGrams);
    }
    sL = Math.max(sL, level === 'carried' ? carried : pouredLower - levelUpper);
    sU = Math.min(sU, pouredUpper);
    [aU, bU, sU] = [Math.min(aU, sU - bL), Math.min(bU, sU - aL), Math.min(sU, aU + bU)];
    [aL, bL, sL] = [Math.max(aL, sL - bU), Math.max(bL, sL - aU), Math.max(sL, aL + bL)];
  }
  return [aL, aU];
}

const boundsOf = ({ events, target, group }: Drawn): readonly [number, number] => {
  const { leastGrams, mostGrams, contradiction } = boundGroupInTarget(prepare(...events), group, target);
  expect(contradiction).toBeNull();
  return [leastGrams, mostGrams];
};
const isWithin = (inner: readonly [number, number], outer: readonly [number, number]) =>
  outer[0] <= inner[0] && inner[1] <= outer[1];

describe('bounds of any period that a hopper can go through', () => {
  it('are those of the pass as written, though exits are merged and the pass ends early', () => {
    fc.assert(
      fc.property(drawPeriod(0), (drawn) => {
        expect(boundsOf(drawn)).toEqual(passAsWritten(drawn, 'as-written'));
      }),
      { numRuns: 1000 },
    );
  });

  it('stay the same to the gram with limits on all masses, and are never wider than as written', () => {
    fc.assert(
      fc.property(drawPeriod(6), (drawn) => {
        const bounds = boundsOf(drawn);
        expect(bounds).toEqual(passAsWritten(drawn, 'carried'));
        expect(isWithin(bounds, passAsWritten(drawn, 'as-written'))).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it('are called doubtful whenever the six numbers contradict each other', () => {
    let contradicted = 0;
    fc.assert(
      fc.property(drawPeriod(2), fc.nat(), fc.nat(40), (drawn, draw, grams) => {
        const at = draw % drawn.events.length;
        const changed = drawn.events.map((event, index): HopperEvent =>
          index === at && event.kind !== 'level-seen' && event.kind !== 'ceiling'
            ? { ...event, mass: exactMass(grams) }
            : event,
        );
        const [least, most] = passAsWritten({ ...drawn, events: changed }, 'carried');
        if (!(least > most)) return;
        contradicted += 1;
        expect(prepare(...changed).contradiction).not.toBeNull();
      }),
      { numRuns: 1500 },
    );
    expect(contradicted).toBeGreaterThan(30);
  });

  it('hold the likely amount of first in, first out between them', () => {
    fc.assert(
      fc.property(drawPeriod(6), (drawn) => {
        // First in, first out follows the recorded masses, which here always agree with the levels.
        const flow = flowFirstInFirstOut({ capacityGrams: null, events: drawn.events });
        const { sources, unexplainedGrams } = likelySourcesOf(flow, drawn.target.keys());
        const likely = sources.reduce(
          (sum, { additionId, grams }) => sum + (drawn.group.has(additionId) ? grams : 0),
          0,
        );
        const [least, most] = boundsOf(drawn);
        expect([unexplainedGrams, least <= likely, likely <= most]).toEqual([0, true, true]);
      }),
      { numRuns: 500 },
    );
  });

  it('only widen when masses are less certain', () => {
    fc.assert(
      fc.property(drawPeriod(3), fc.nat(4), (drawn, more) => {
        const events = drawn.events.map((event): HopperEvent =>
          event.kind === 'addition' || event.kind === 'exit'
            ? {
                ...event,
                mass: {
                  ...event.mass,
                  lowerGrams: Math.max(0, event.mass.lowerGrams - more),
                  upperGrams: event.mass.upperGrams + more,
                },
              }
            : event,
        );
        expect(isWithin(boundsOf(drawn), boundsOf({ ...drawn, events }))).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('only widen when an addition moves before an exit', () => {
    fc.assert(
      fc.property(drawPeriod(3), fc.nat(), (drawn, draw) => {
        const withoutLevels = { ...drawn, events: drawn.events.filter(({ kind }) => kind !== 'level-seen') };
        const places = withoutLevels.events.flatMap((event, at) =>
          event.kind === 'exit' && withoutLevels.events[at + 1]?.kind === 'addition' ? [at] : [],
        );
        const at = places[draw % Math.max(1, places.length)];
        if (at === undefined) return;
        const [exit, addition] = [withoutLevels.events[at]!, withoutLevels.events[at + 1]!];
        const events = withoutLevels.events.toSpliced(at, 2, addition, exit);
        expect(isWithin(boundsOf(withoutLevels), boundsOf({ ...withoutLevels, events }))).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('only grow with the target', () => {
    fc.assert(
      fc.property(drawPeriod(3), fc.nat(), (drawn, draw) => {
        const more = drawn.events[draw % drawn.events.length]!;
        if (more.kind !== 'exit') return;
        const [least, most] = boundsOf(drawn);
        const [leastOfMore, mostOfMore] = boundsOf({ ...drawn, target: new Map([...drawn.target, [more.id, 'in']]) });
        expect([leastOfMore >= least, mostOfMore >= most]).toEqual([true, true]);
      }),
      { numRuns: 700 },
    );
  });

  it('only grow with the group where masses are exact', () => {
    fc.assert(
      fc.property(drawPeriod(0), fc.nat(), (drawn, draw) => {
        const more = drawn.events[draw % drawn.events.length]!;
        if (more.kind !== 'addition') return;
        const [least, most] = boundsOf(drawn);
        const [leastOfMore, mostOfMore] = boundsOf({ ...drawn, group: new Map([...drawn.group, [more.id, 'whole']]) });
        expect([leastOfMore >= least, mostOfMore >= most]).toEqual([true, true]);
      }),
      { numRuns: 700 },
    );
  });

  it('are wider, on both sides, when exits of the target become doubtful', () => {
    fc.assert(
      fc.property(drawPeriod(3), fc.nat(), (drawn, draw) => {
        const target = new Map(drawn.target);
        for (const [index, id] of [...target.keys()].entries()) if ((draw >> index) % 2 === 1) target.set(id, 'maybe');
        const [least, most] = boundsOf(drawn);
        const [leastInDoubt, mostInDoubt] = boundsOf({ ...drawn, target });
        expect([leastInDoubt <= least, mostInDoubt]).toEqual([true, most]);
      }),
      { numRuns: 300 },
    );
  });

  it('are the same one by one and in a batch', () => {
    fc.assert(
      fc.property(drawPeriod(3), (drawn) => {
        const period = prepare(...drawn.events);
        for (const { additionId, ...bounds } of boundEveryAdditionInTarget(period, drawn.target)) {
          expect(bounds).toEqual(boundGroupInTarget(period, wholeAdditions([additionId]), drawn.target));
        }
      }),
      { numRuns: 200 },
    );
  });
});
