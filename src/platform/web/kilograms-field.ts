import { Transform } from 'class-transformer';
import { kilogramsText, readKilograms } from '../../core/units/grams.js';
import { IsInt, Max, Min } from './checks.js';
import { field, wrong, type FieldOptions } from './fields.js';

/**
 * A mass that a person types in kilograms, `996.5` or `996,5` or ` 1 034,5 kg `, as whole grams: exact, at most three
 * decimals. The property is named by what comes out of it (`grossGrams`); its limits are grams, both ends included.
 */
export function KilogramsField(options: FieldOptions & { least?: number; most?: number } = {}): PropertyDecorator {
  const { least = 0, most = 2_000_000_000 } = options;
  const facts = { least: kilogramsText(least), most: kilogramsText(most) };
  return field({ example: '996.5', says: 'Kilograms, comma or point', ...options }, { type: 'string' }, [
    Max(most, wrong('field-not-kilograms', facts)),
    Min(least, wrong('field-not-kilograms', facts)),
    IsInt(wrong('field-not-kilograms', facts)),
    Transform(({ value }: { value: unknown }) => {
      if (typeof value === 'number') return gramsOrAsIs(String(value));
      return typeof value === 'string' ? gramsOrAsIs(value) : value;
    }),
  ]);
}

function gramsOrAsIs(typed: string): number | string | undefined {
  const reading = readKilograms(typed);
  if (reading.ok) return reading.grams;
  return reading.problem === 'empty' ? undefined : typed;
}
