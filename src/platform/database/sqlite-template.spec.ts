import { describe, expect, it } from '@jest/globals';
import { plainStatement, type PlainStatement } from './sqlite-template.js';

const asked = (strings: TemplateStringsArray, ...values: unknown[]): PlainStatement => plainStatement(strings, values);
const ids = (count: number): string[] => Array.from({ length: count }, (_, place) => `bag-${place}`);

describe('a statement for SQLite', () => {
  it('takes values as parameters, truth as a number, and text where a function gives text', () => {
    expect(
      asked`SELECT ${() => '"id"'} FROM "tip" WHERE "is_late" = ${true} AND "id" = ${'a'} AND "x" IS ${null}`,
    ).toEqual({
      statement: 'SELECT "id" FROM "tip" WHERE "is_late" = ? AND "id" = ? AND "x" IS NULL',
      parameters: [1, 'a'],
    });
  });

  it('has few lengths, however many ids are looked for: a list is filled up with one of its own', () => {
    const lengths = new Set(ids(500).map((_, count) => asked`"id" IN (${() => ids(count + 1)})`.statement));
    expect(lengths.size).toBe(10);
    expect(asked`"id" IN (${() => ids(3)})`).toEqual({
      statement: '"id" IN (?, ?, ?, ?)',
      parameters: ['bag-0', 'bag-1', 'bag-2', 'bag-0'],
    });
    expect(asked`"n" IN (${() => [1, true, 2]})`.parameters).toEqual([1, 1, 2, 1]);
  });

  it('is refused with a list of nothing', () => {
    expect(() => asked`"id" IN (${() => []})`).toThrow('empty');
  });
});
