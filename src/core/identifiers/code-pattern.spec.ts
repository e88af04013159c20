import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { patternParts, patternProblem, readPattern } from './code-pattern.js';

describe('the pattern of a pack code', () => {
  it.each([
    'L{y}{ddd}',
    'L{y}{ddd}{line}{shift} {HH}:{mm}',
    'L{yy}{MM}{DD}{line:2}',
    '{DD}{MM}{yyyy} {line:4}{shift:3}',
    'BEST BEFORE {bestBefore:DD.MM.YYYY} L{y}{ddd}{line}',
    '{bestBefore:MM/YY} {line}',
    '{HH}h{mm} L{y}{ddd}',
  ])('may be %s', (pattern) => {
    expect(patternProblem(pattern)).toBeNull();
    expect(patternParts(pattern).length).toBeGreaterThan(1);
  });

  it.each([
    ['', 'empty'],
    ['  ', 'empty'],
    [`L{y}{ddd}${' '.repeat(120)}`, 'too-long'],
    ['L{week}', 'unknown-token'],
    ['L{y}{ddd}{', 'unknown-token'],
    ['L}{y}{ddd}', 'unknown-token'],
    ['L{y:2}{ddd}', 'unknown-token'],
    ['L{y}{ddd}{line:5}', 'unknown-token'],
    ['L{y}{ddd}{line:0}', 'unknown-token'],
    ['{bestBefore}', 'unknown-token'],
    ['{bestBefore:DD.MMM.YY}', 'unknown-token'],
    ['{y}{ddd}{y}', 'token-twice'],
    ['{y}{yy}{ddd}', 'token-twice'],
    ['{y}{ddd}{MM}{DD}', 'token-twice'],
    ['L{ddd}', 'half-a-day'],
    ['L{y}', 'half-a-day'],
    ['L{y}{MM}', 'half-a-day'],
    ['L{y}{ddd} {HH}', 'half-a-time'],
    ['{bestBefore:DD.MM}', 'half-a-best-before'],
    ['{bestBefore:YYYY}', 'half-a-best-before'],
    ['{bestBefore:MM.YY.YYYY}', 'half-a-best-before'],
    ['LOT {line}{shift}', 'no-day'],
    ['LOT 7', 'no-day'],
  ])('is refused as %p: %s', (pattern, problem) => {
    expect(patternProblem(pattern)).toBe(problem);
    expect(() => patternParts(pattern)).toThrow(RangeError);
  });

  it('is taken apart into text and fields of fixed width', () => {
    expect(readPattern('L{y}{line:2}{ddd}')).toEqual({
      ok: true,
      parts: [
        { kind: 'literal', text: 'L' },
        { kind: 'production', token: 'y', width: 1 },
        { kind: 'production', token: 'line', width: 2 },
        { kind: 'production', token: 'ddd', width: 3 },
      ],
    });
    expect(readPattern('L{week}')).toEqual({ ok: false, problem: 'unknown-token', token: '{week}' });
  });

  it('never makes its reader throw', () => {
    const junk = fc.array(fc.constantFrom('{', '}', 'y', '{ddd}', '{y}', '{line', ':', '{bestBefore:', 'DD', '.', ' '));
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          junk.map((pieces) => pieces.join('')),
        ),
        (pattern) => {
          expect(typeof readPattern(pattern).ok).toBe('boolean');
        },
      ),
    );
  });
});
