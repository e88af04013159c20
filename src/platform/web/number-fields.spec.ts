import 'reflect-metadata';
import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { BadForm } from '../refusal.js';
import { formPipe } from './check-form.js';
import { DecimalField, WholeField } from './fields.js';
import { KilogramsField } from './kilograms-field.js';

class Numbers {
  @KilogramsField({ optional: true, least: 0, most: 2_500_000 })
  grossGrams?: number | null;

  @WholeField({ optional: true, least: 0, most: 100_000_000 })
  packCount?: number | null;

  @DecimalField({ optional: true, least: '-10', most: '100000' })
  moisturePercent?: string | null;
}

type Given = Partial<Record<keyof Numbers, unknown>>;

/** What a form makes of a field, or the code of why it was refused. */
async function read(name: keyof Numbers, typed: unknown): Promise<unknown> {
  const given: Given = { [name]: typed };
  try {
    const form = (await formPipe().transform(given, { type: 'body', metatype: Numbers })) as Numbers;
    return form[name];
  } catch (error) {
    if (error instanceof BadForm) return error.problems[0]?.code;
    throw error;
  }
}

const spaces = ['', ' ', '\u00a0', '\u202f', '\u202f'];
const grouped = (digits: string, space: string): string => digits.replaceAll(/\B(?=(\d{3})+$)/g, space);

describe('kilograms as a person types them', () => {
  it.each([
    ['996.5', 996_500],
    ['996,5', 996_500],
    [' 996,5 kg ', 996_500],
    ['1 034,5', 1_034_500],
    ['1\u202f034.5', 1_034_500],
    ['1.234', 1234],
    ['0', 0],
    ['2500', 2_500_000],
    [996.5, 996_500],
    ['', undefined],
  ])('reads %p as %p g', async (typed, grams) => {
    expect(await read('grossGrams', typed)).toBe(grams);
  });

  it.each(['996.5555', '1.234,5', '1,234.5', '-1', 'a lot', '99 65', '2500.001', '1e3', true, {}, '9'.repeat(40)])(
    'refuses %p and says what would be right',
    async (typed) => {
      expect(await read('grossGrams', typed)).toBe('field-not-kilograms');
    },
  );

  it('come out as the very grams, whatever separator and spaces are typed', async () => {
    const typing = fc.tuple(
      fc.integer({ min: 0, max: 2_500_000 }),
      fc.constantFrom('.', ','),
      fc.constantFrom(...spaces),
    );
    await fc.assert(
      fc.asyncProperty(typing, async ([grams, separator, space]) => {
        const whole = grouped(String(Math.floor(grams / 1000)), space);
        const typed = `${whole}${separator}${String(grams % 1000).padStart(3, '0')}`;
        expect(await read('grossGrams', typed)).toBe(grams);
      }),
    );
  });
});

describe('a whole number as a person types it', () => {
  it('may have spaces between its thousands, of any width', async () => {
    const typing = fc.tuple(fc.integer({ min: 0, max: 100_000_000 }), fc.constantFrom(...spaces));
    await fc.assert(
      fc.asyncProperty(typing, async ([count, space]) => {
        expect(await read('packCount', grouped(String(count), space))).toBe(count);
      }),
    );
  });

  it.each(['1.000', '1,000', '12.5', '12,5', '1 000,0', '1.000.000'])(
    'is not guessed from %p: a point or a comma may mean two things',
    async (typed) => {
      expect(await read('packCount', typed)).toBe('field-whole-with-separator');
    },
  );

  it.each(['1 00', '10 00', '1  000', 'ten', '-1', '100000001', '0x10', '1e3'])('is not %p', async (typed) => {
    expect(await read('packCount', typed)).toBe('field-not-whole');
  });
});

describe('a decimal as a person types it', () => {
  it('is the same with a comma and with a point, and keeps its digits', async () => {
    const typing = fc.tuple(
      fc.integer({ min: 0, max: 99_999 }),
      fc.stringMatching(/^\d{1,6}$/),
      fc.constantFrom(...spaces),
    );
    await fc.assert(
      fc.asyncProperty(typing, async ([whole, decimals, space]) => {
        for (const separator of ['.', ',']) {
          const typed = `${grouped(String(whole), space)}${separator}${decimals}`;
          expect(await read('moisturePercent', typed)).toBe(`${whole}.${decimals}`);
        }
      }),
    );
  });

  it.each(['1.234,5', '1,234.5', '0,02 %', ',', '1 0,5', '100000,1'])('is not %p', async (typed) => {
    expect(await read('moisturePercent', typed)).toBe('field-not-decimal');
  });
});
