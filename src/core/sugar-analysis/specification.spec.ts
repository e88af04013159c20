import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { type Result, type Specification, type SpecificationLine, compareWithSpecification } from './specification.js';

const drying = 'loss on drying, 105 °C, 3 h';
const unbuffered = 'solution colour, no pH adjustment';
const moistureLine: SpecificationLine = {
  property: 'moisture-percent',
  method: drying,
  required: true,
  minimum: null,
  maximum: '0.06',
};
const colourLine: SpecificationLine = {
  property: 'colour-iu',
  method: unbuffered,
  required: true,
  minimum: null,
  maximum: '45',
};
const white: Specification = [moistureLine, colourLine];
const moisture = (value: string, method = drying): Result => ({ property: 'moisture-percent', method, value });
const colour = (value: string): Result => ({ property: 'colour-iu', method: unbuffered, value });

describe('results against a specification', () => {
  it('are complete and within when every line has a result within its limits', () => {
    expect(compareWithSpecification([moisture('0.02'), colour('22.56')], white)).toEqual({
      lines: [
        {
          property: 'moisture-percent',
          method: drying,
          required: true,
          verdict: 'within',
          values: ['0.02'],
          otherMethods: [],
        },
        {
          property: 'colour-iu',
          method: unbuffered,
          required: true,
          verdict: 'within',
          values: ['22.56'],
          otherMethods: [],
        },
      ],
      overall: 'complete-and-within',
      decisionRule: 'simple-acceptance',
    });
  });

  it('are within exactly at the limit and outside at the least digit beyond it', () => {
    expect(compareWithSpecification([moisture('0.06')], [moistureLine]).overall).toBe('complete-and-within');
    expect(compareWithSpecification([moisture('0.0600000000001')], [moistureLine]).overall).toBe('outside');
    const polarisation: SpecificationLine = { ...moistureLine, minimum: '99.7', maximum: null };
    expect(compareWithSpecification([moisture('99.7')], [polarisation]).overall).toBe('complete-and-within');
    expect(compareWithSpecification([moisture('99.69')], [polarisation]).overall).toBe('outside');
  });

  it('are compared as decimals, not as text', () => {
    expect(compareWithSpecification([colour('9.5'), moisture('0.02')], white).overall).toBe('complete-and-within');
    expect(compareWithSpecification([colour('100'), moisture('0.02')], white).overall).toBe('outside');
  });

  it('are incomplete while a required result is missing, and outside even so once one is', () => {
    expect(compareWithSpecification([moisture('0.02')], white).overall).toBe('incomplete');
    expect(compareWithSpecification([], white).lines.map(({ verdict }) => verdict)).toEqual(['missing', 'missing']);
    expect(compareWithSpecification([moisture('0.07')], white).overall).toBe('outside');
  });

  it('by another method count as missing, and the other method is named', () => {
    const titrated = compareWithSpecification(
      [moisture('0.02', 'titration'), moisture('0.03', 'titration')],
      [moistureLine],
    );
    expect(titrated.overall).toBe('incomplete');
    expect(titrated.lines[0]).toMatchObject({ verdict: 'missing', values: [], otherMethods: ['titration'] });
  });

  it('that are not required keep nothing back by being missing, but do by being outside', () => {
    const wished = [moistureLine, { ...colourLine, required: false }];
    expect(compareWithSpecification([moisture('0.02')], wished).overall).toBe('complete-and-within');
    expect(compareWithSpecification([moisture('0.02'), colour('46')], wished).overall).toBe('outside');
  });

  it('are not cleared by a retest: each result must be within', () => {
    const retested = compareWithSpecification([moisture('0.07'), moisture('0.05')], [moistureLine]);
    expect(retested.lines[0]).toMatchObject({ verdict: 'outside', values: ['0.07', '0.05'] });
  });

  it('that nobody asked for change nothing, and a specification without lines is complete', () => {
    expect(compareWithSpecification([colour('900')], [moistureLine]).overall).toBe('incomplete');
    expect(compareWithSpecification([colour('900')], []).overall).toBe('complete-and-within');
  });

  it('need decimals, both as value and as limit', () => {
    expect(() => compareWithSpecification([moisture('< 0.02')], white)).toThrow(RangeError);
    expect(() => compareWithSpecification([moisture('0.02')], [{ ...moistureLine, maximum: '6 %' }])).toThrow(
      RangeError,
    );
  });

  it('never get better by one more result, nor worse by a wider limit', () => {
    const rank = { outside: 0, incomplete: 1, 'complete-and-within': 2 } as const;
    const values = fc.array(fc.integer({ min: 0, max: 12 }), { maxLength: 4 });
    fc.assert(
      fc.property(values, fc.integer({ min: 0, max: 12 }), (hundredths, limit) => {
        const results = hundredths.map((value) => colour(String(value)));
        const overall = (given: readonly Result[], maximum: number) =>
          rank[compareWithSpecification(given, [{ ...colourLine, maximum: String(maximum) }]).overall];
        expect(overall(results, limit + 1)).toBeGreaterThanOrEqual(overall(results, limit));
        if (results.length > 0) {
          expect(overall([...results, colour('6')], limit)).toBeLessThanOrEqual(overall(results, limit));
        }
      }),
    );
  });
});

// Grade limits of published standards, each with its source in the file.
describeWithChecks('limits of published grades', () => {
  it('take a result exactly at the limit and refuse one a thousandth beyond', () => {
    const { rows } = readChecks<{ rows: readonly { op: string; limit: unknown }[] }>('quality/grades.json');
    const limits = rows.filter(({ op, limit }) => typeof limit === 'number' && (op === '<=' || op === '>='));
    expect(limits.length).toBeGreaterThan(50);
    for (const { op, limit } of limits) {
      const isMaximum = op === '<=';
      const thousandths = Math.round(Number(limit) * 1000);
      const line: SpecificationLine = {
        ...moistureLine,
        minimum: isMaximum ? null : String(limit),
        maximum: isMaximum ? String(limit) : null,
      };
      const beyond = String((thousandths + (isMaximum ? 1 : -1)) / 1000);
      const at = compareWithSpecification([moisture(String(limit))], [line]).overall;
      expect([op, limit, at]).toEqual([op, limit, 'complete-and-within']);
      const past = compareWithSpecification([moisture(beyond)], [line]).overall;
      expect([op, beyond, past]).toEqual([op, beyond, 'outside']);
    }
  });
});
