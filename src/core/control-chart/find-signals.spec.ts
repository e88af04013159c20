import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { standardized } from './control-chart.js';
import { begunSignals, findSignals } from './find-signals.js';
import { nelsonRules, westernElectricRules, type ChartRuleName } from './chart-rules.js';

/** Each rule with the least that sets it off (the figures it rests on), and what just does not. */
const cases: readonly {
  readonly rule: ChartRuleName;
  readonly sets: readonly number[];
  readonly restsOn: readonly number[];
  readonly just: readonly number[];
}[] = [
  { rule: 'western-electric-1', sets: [3.01], restsOn: [0], just: [3, -3] },
  { rule: 'western-electric-2', sets: [2.1, 0, 2.1], restsOn: [0, 2], just: [2.1, 0, 0, 2.1, -2.1, 2] },
  {
    rule: 'western-electric-3',
    sets: [1.1, 1.1, -0.5, 1.1, 1.1],
    restsOn: [0, 1, 3, 4],
    just: [1.1, 1.1, 1, 1.1, 1, 1.1],
  },
  { rule: 'western-electric-4', sets: seq(8, 0.1), restsOn: upTo(8), just: [...seq(7, 0.1), 0, ...seq(7, 0.1)] },
  { rule: 'nelson-1', sets: [-3.01], restsOn: [0], just: [3, -3] },
  { rule: 'nelson-2', sets: seq(9, -0.1), restsOn: upTo(9), just: [...seq(8, 0.1), ...seq(8, -0.1)] },
  { rule: 'nelson-3', sets: [0, 0.1, 0.2, 0.3, 0.4, 0.5], restsOn: upTo(6), just: [0, 0.1, 0.2, 0.3, 0.4, 0.4, 0.5] },
  {
    rule: 'nelson-4',
    sets: Array.from({ length: 14 }, (_, at) => (at % 2) * 0.1),
    restsOn: upTo(14),
    just: [...Array.from({ length: 13 }, (_, at) => (at % 2) * 0.1), 0],
  },
  { rule: 'nelson-5', sets: [-2.1, -2.1], restsOn: [0, 1], just: [2.1, -2.1, 0, 2.1] },
  { rule: 'nelson-6', sets: [-1.1, -1.1, -1.1, -1.1], restsOn: upTo(4), just: [-1.1, -1.1, 1.1, 0, -1.1, -1.1] },
  { rule: 'nelson-7', sets: seq(15, 0.99), restsOn: upTo(15), just: [...seq(14, 0.99), 1, ...seq(14, -0.99)] },
  { rule: 'nelson-8', sets: [...seq(7, 1.1), -1.1], restsOn: upTo(8), just: [...seq(9, 1.1), 1, ...seq(7, -1.1)] },
];

const rules = [...westernElectricRules, ...nelsonRules];

describe('chart rules', () => {
  it('are all tried here', () => {
    expect(cases.map(({ rule }) => rule)).toEqual(rules.map(({ name }) => name));
  });

  it.each(cases)(
    '$rule shows with its last figure, names those it rests on, and not sooner',
    ({ rule, sets, restsOn, just }) => {
      const own = rules.filter(({ name }) => name === rule);
      expect(findSignals(sets, own)).toEqual([{ rule, at: sets.length - 1, restsOn }]);
      expect(findSignals(just, own)).toEqual([]);
    },
  );

  it('go on with each further figure', () => {
    const { length } = findSignals(seq(10, 0.1), westernElectricRules);
    expect(length).toBe(3);
    expect(findSignals([4, 4], [westernElectricRules[0]]).map(({ at }) => at)).toEqual([0, 1]);
  });

  it('show with a figure that is beyond itself, not with a quiet one after it', () => {
    expect(findSignals([2.1, 2.1, 0.3], [westernElectricRules[1]]).map(({ at }) => at)).toEqual([1]);
    expect(findSignals([1.1, 1.1, 1.1, 1.1, 0.3], [nelsonRules[5]]).map(({ at }) => at)).toEqual([3]);
  });

  it('see the other side as they see this one', () => {
    const figures = fc.array(fc.integer({ min: -35, max: 35 }), { maxLength: 40 });
    fc.assert(
      fc.property(figures, (tenths) => {
        const row = tenths.map((tenth) => tenth / 10);
        expect(
          findSignals(
            row.map((value) => -value),
            rules,
          ),
        ).toEqual(findSignals(row, rules));
      }),
    );
  });

  it('of both sets agree where they ask the same', () => {
    const figures = fc.array(fc.double({ min: -3.5, max: 3.5, noNaN: true }), { maxLength: 40 });
    const asked = [0, 1, 2] as const;
    fc.assert(
      fc.property(figures, (row) => {
        const places = asked.map((at) => findSignals(row, [westernElectricRules[at]]).map(({ restsOn }) => restsOn));
        const same = [nelsonRules[0], nelsonRules[4], nelsonRules[5]];
        expect(same.map((rule) => findSignals(row, [rule]).map(({ restsOn }) => restsOn))).toEqual(places);
      }),
    );
  });

  it('want numbers', () => {
    expect(() => findSignals([NaN], westernElectricRules)).toThrow(RangeError);
  });

  it('take the figures of a chart in its own standard deviations', () => {
    const point = { lower: 4, upper: 16 };
    expect(standardized({ centre: 10, points: [{ value: 13, sigma: 2, ...point }] })).toEqual([1.5]);
    expect(standardized({ centre: 10, points: [{ value: 10, sigma: 0, ...point }] })).toEqual([0]);
  });
});

// Wording after the Western Electric handbook (1956) and Nelson (1984) as kept in the check values.
describeWithChecks('chart rules and their wording', () => {
  it('ask for as many figures as the wording says', () => {
    const kept = readChecks<{
      readonly western_electric: readonly { readonly id: number; readonly test: string }[];
      readonly nelson: readonly { readonly id: number; readonly test: string }[];
    }>('metrology/control-rules.json');
    const read = (name: string, wording: string) => [name, ...(wording.match(/\d+/g) ?? []).map(Number)];
    const own = rules.map(({ name, pattern }) => {
      // "1 point" and "8 in a row" name one number for both; the centre line is not called 0.
      const needed = pattern.kind === 'beyond' && pattern.needed < pattern.of ? [pattern.needed] : [];
      const sigmas = 'sigmas' in pattern && pattern.sigmas > 0 ? [pattern.sigmas] : [];
      return [name, ...needed, pattern.of, ...sigmas];
    });
    expect(own).toEqual([
      ...kept.western_electric.map(({ id, test }) => read(`western-electric-${id}`, test)),
      ...kept.nelson.map(({ id, test }) => read(`nelson-${id}`, test)),
    ]);
  });

  it('says a signal that goes on once, each rule on its own, and anew where it stopped between', () => {
    expect(begunSignals(findSignals([4, 4, 0, 4], westernElectricRules.slice(0, 1))).map(({ at }) => at)).toEqual([
      0, 3,
    ]);
    const both = begunSignals(findSignals([0, 2.1, 3.1, 3.2], westernElectricRules));
    expect(both.map(({ rule, at }) => `${at} ${rule}`)).toEqual(['2 western-electric-1', '2 western-electric-2']);
  });
});

function seq(length: number, value: number): readonly number[] {
  return new Array<number>(length).fill(value);
}

function upTo(length: number): readonly number[] {
  return Array.from({ length }, (_, at) => at);
}
