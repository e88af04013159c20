import { Transform } from 'class-transformer';
import { languages, type Language } from '../../platform/sentences/language.js';
import { ChoiceField, DecimalField, IdField, IdListField, TextField, WholeField } from '../../platform/web/fields.js';
import { KilogramsField } from '../../platform/web/kilograms-field.js';
import { codeForm, codePattern, printedForm, printedPattern } from '../../plant/code-patterns.js';
import { tippingRules } from '../../plant/grade.form.js';
import { placeKinds } from '../../plant/customer.form.js';

const code = { most: 20, pattern: codePattern, form: codeForm };
const timeOfDay = { pattern: /^([01]\d|2[0-3]):[0-5]\d$/, form: 'clock-time' };

export class SiteStepForm {
  @TextField({ most: 60 })
  name!: string;

  @TextField({ most: 60 })
  timeZone!: string;

  @TextField({ ...timeOfDay, example: '06:00' })
  productionDayStart!: string;

  @TextField({ most: 12 })
  companyPrefix!: string;

  @TextField({ most: 13 })
  gln!: string;
}

export const shiftChoices = ['three-by-eight', 'two-by-twelve', 'own'] as const;

export class ShiftsStepForm {
  @ChoiceField(shiftChoices)
  pattern!: (typeof shiftChoices)[number];

  @TextField({ optional: true, most: 1000, says: 'A line each: code, name, start' })
  own?: string | null;
}

export class NamedStepForm {
  @TextField({ most: 60 })
  name!: string;

  @TextField(code)
  code!: string;
}

export class ScaleStepForm {
  @TextField({ most: 60 })
  name!: string;

  @TextField(code)
  code!: string;

  @DecimalField({ least: '0.000001', most: '1000', example: '0.5' })
  intervalKilograms!: string;

  @DecimalField({ least: '0.000001', most: '1000', example: '1' })
  errorKilograms!: string;

  @WholeField({ least: 1, most: 20_000 })
  checkEveryHours!: number;
}

export class BagTypeStepForm {
  @TextField({ most: 60 })
  name!: string;

  @TextField(code)
  code!: string;

  @KilogramsField({ least: 1, most: 100_000, example: '2.3' })
  usualTareGrams!: number;

  @KilogramsField({ least: 1, most: 100_000, example: '2.1' })
  leastTareGrams!: number;

  @KilogramsField({ least: 1, most: 100_000, example: '2.5' })
  mostTareGrams!: number;

  @KilogramsField({ least: 1, most: 2_500_000, example: '1250' })
  safeLoadGrams!: number;

  @IdField({ optional: true, says: 'The type that it takes the place of' })
  insteadOf?: string | null;
}

export class HopperStepForm {
  @TextField({ most: 60 })
  name!: string;

  @TextField(code)
  code!: string;

  @KilogramsField({ least: 1000, most: 2_000_000_000, example: '4000' })
  capacityGrams!: number;
}

export class LineStepForm {
  @TextField({ most: 60 })
  name!: string;

  @TextField({ most: 4, pattern: printedPattern, form: printedForm })
  code!: string;

  @IdField()
  hopperId!: string;
}

export class FeedStepForm {
  @IdField()
  lineId!: string;

  @IdField()
  hopperId!: string;
}

/** How many rows for limits the form of a grade has. */
export const limitRows = [1, 2, 3, 4] as const;

const property = {
  optional: true,
  most: 40,
  pattern: /^[a-z][a-z0-9-]*$/,
  form: 'property',
} as const;
const method = { optional: true, most: 60, example: 'GS2/1/3/9-15' } as const;
const limit = { optional: true, least: '-1000000', example: '0.06' } as const;

export class GradeStepForm {
  @TextField({ most: 60 })
  name!: string;

  @TextField(code)
  code!: string;

  @ChoiceField(tippingRules)
  tippingRule!: string;

  @TextField(property)
  property1?: string | null;

  @TextField(method)
  method1?: string | null;

  @DecimalField(limit)
  maximum1?: string | null;

  @TextField(property)
  property2?: string | null;

  @TextField(method)
  method2?: string | null;

  @DecimalField(limit)
  maximum2?: string | null;

  @TextField(property)
  property3?: string | null;

  @TextField(method)
  method3?: string | null;

  @DecimalField(limit)
  maximum3?: string | null;

  @TextField(property)
  property4?: string | null;

  @TextField(method)
  method4?: string | null;

  @DecimalField(limit)
  maximum4?: string | null;
}

export class UsualNetStepForm {
  @IdField()
  gradeId!: string;

  @KilogramsField({ least: 1, most: 2_500_000, example: '980' })
  leastNetGrams!: number;

  @KilogramsField({ least: 1, most: 2_500_000, example: '1020' })
  mostNetGrams!: number;
}

export class FormatStepForm {
  @TextField({ most: 60 })
  name!: string;

  @TextField(code)
  code!: string;

  @TextField({ most: 14 })
  gtin!: string;

  @WholeField({ least: 1, most: 50_000 })
  nominalGrams!: number;

  @DecimalField({ least: '0.001', most: '60000', example: '1990' })
  lowerGrams!: string;

  @DecimalField({ least: '0.001', most: '60000', example: '2020' })
  upperGrams!: string;

  @WholeField({ most: 10_000 })
  packTareGrams!: number;

  @WholeField({ least: 1, most: 100_000 })
  packsPerPallet!: number;

  @KilogramsField({ most: 200_000, example: '25' })
  palletTareGrams!: number;

  @TextField({ most: 120 })
  codePattern!: string;

  @WholeField({ optional: true, least: 1, most: 240 })
  bestBeforeMonths?: number | null;

  // One ticked box of a plain form comes as a text, several as a list.
  @Transform(({ value }: { value: unknown }) => (typeof value === 'string' ? [value] : value))
  @IdListField({ most: 50 })
  gradeIds!: string[];
}

export class PlaceStepForm {
  @TextField(code)
  code!: string;

  @ChoiceField(placeKinds)
  kind!: string;
}

export class CustomerStepForm {
  @TextField({ most: 120 })
  name!: string;

  @TextField(code)
  code!: string;

  @TextField({ most: 400 })
  address!: string;

  @TextField({ optional: true, most: 13 })
  customerGln?: string | null;

  @ChoiceField(languages, { optional: true })
  paperLanguage?: Language | null;
}

export class VehicleCheckStepForm {
  @TextField({ most: 4000, says: 'A line for each point' })
  points!: string;
}

export class RiskLimitsStepForm {
  @WholeField({ least: 1, most: 10_000 })
  mostWaitingBagCount!: number;

  @KilogramsField({ least: 1000, most: 2_000_000_000 })
  mostWaitingGrams!: number;
}
