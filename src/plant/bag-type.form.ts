import { TextField, WholeField } from '../platform/web/fields.js';
import { codeForm, codePattern } from './code-patterns.js';

/** Limits that no bulk bag goes beyond. Common practice, no source. */
const heaviestTareGrams = 100_000;
const heaviestLoadGrams = 2_500_000;

export class BagTypeForm {
  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'FOURLOOP' })
  code!: string;

  @TextField({ most: 60, example: 'Four loops, with liner' })
  name!: string;

  @WholeField({ least: 1, most: heaviestTareGrams, example: 2_300, says: 'What an empty bag usually weighs' })
  usualTareGrams!: number;

  @WholeField({ least: 1, most: heaviestTareGrams, example: 2_100, says: 'The lightest that was found' })
  leastTareGrams!: number;

  @WholeField({ least: 1, most: heaviestTareGrams, example: 2_500, says: 'The heaviest that was found' })
  mostTareGrams!: number;

  @WholeField({
    least: 1,
    most: heaviestLoadGrams,
    example: 1_250_000,
    says: "Safe working load, from the maker's label",
  })
  safeLoadGrams!: number;
}
