import { DayField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import { codeForm, codePattern } from './code-patterns.js';

export class AddScaleForm {
  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'S1' })
  code!: string;

  @TextField({ most: 60, example: 'Bag scale 1' })
  name!: string;

  @WholeField({ least: 1, example: 500_000, says: 'The verification scale interval' })
  intervalMilligrams!: number;

  @WholeField({
    least: 1,
    example: 1_000_000,
    says: 'Maximum permissible error in service, at the loads it is used for',
  })
  maximumPermissibleErrorMilligrams!: number;

  @WholeField({ least: 1, most: 20_000, example: 24 })
  checkEveryHours!: number;
}

export class CheckScaleForm {
  @IdField()
  scaleId!: string;

  @WholeField({ least: -2_000_000_000, example: 200_000, says: 'Reading minus known weight; the largest of the check' })
  deviationMilligrams!: number;

  @InstantField({ optional: true, says: 'When it was checked; absent: now' })
  checkedAt?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why it is entered late' })
  reason?: string | null;
}

export class VerifyScaleForm {
  @IdField()
  scaleId!: string;

  @DayField({ example: '2026-01-01', says: 'First day, on the calendar of the plant' })
  verifiedOn!: string;

  @DayField({ example: '2027-12-31', says: 'Last day' })
  verifiedUntilOn!: string;
}
