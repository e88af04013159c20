import {
  ChoiceField,
  DecimalField,
  FlagField,
  FormListField,
  IdField,
  IdListField,
  InstantField,
  TextField,
  WholeField,
} from '../platform/web/fields.js';
import { codeForm, codePattern } from './code-patterns.js';

export const tippingRules = ['released-only', 'tip-at-risk'] as const;

export class AddGradeForm {
  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'WS2' })
  code!: string;

  @TextField({ most: 60, example: 'White sugar' })
  name!: string;

  @ChoiceField(tippingRules)
  tippingRule!: string;
}

export class SpecificationLineForm {
  @TextField({
    most: 40,
    pattern: /^[a-z][a-z0-9-]*$/,
    form: 'property',
    example: 'moisture-percent',
  })
  property!: string;

  @TextField({ most: 60, example: 'GS2/1/3/9-15', says: 'The method, with its edition' })
  method!: string;

  @FlagField({ example: true, says: 'Whether a release waits for this result' })
  required!: boolean;

  @DecimalField({ optional: true, least: '-1000000', example: '0.02' })
  minimum?: string | null;

  @DecimalField({ optional: true, least: '-1000000', example: '0.06' })
  maximum?: string | null;
}

export class SetUpGradeForm {
  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'WS2' })
  code!: string;

  @TextField({ most: 60, example: 'White sugar' })
  name!: string;

  @ChoiceField(tippingRules)
  tippingRule!: string;

  @FormListField(() => SpecificationLineForm, { most: 40, says: 'Its first limits' })
  lines!: SpecificationLineForm[];
}

export class SetSpecificationForm {
  @IdField()
  gradeId!: string;

  @InstantField({ optional: true, says: 'From when on; absent: now' })
  validFrom?: string | null;

  @FormListField(() => SpecificationLineForm, { most: 40 })
  lines!: SpecificationLineForm[];
}

export class SetUsualNetForm {
  @IdField()
  gradeId!: string;

  @WholeField({ least: 1, most: 2_500_000, example: 980_000, says: 'The lightest net that a full bag usually has' })
  leastNetGrams!: number;

  @WholeField({ least: 1, most: 2_500_000, example: 1_020_000, says: 'The heaviest' })
  mostNetGrams!: number;
}

export class AddPackFormatForm {
  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'WS-2KG' })
  code!: string;

  @TextField({ most: 60, example: 'White sugar 2 kg' })
  name!: string;

  @TextField({ most: 14, example: '9520123000103', says: 'GTIN of 8, 12, 13 or 14 digits' })
  gtin!: string;

  @WholeField({ least: 1, most: 50_000, example: 2000 })
  nominalGrams!: number;

  @WholeField({ least: 1, example: 1_990_000, says: 'Lower limit of the mean net while nothing was weighed' })
  assumedLowerMilligrams!: number;

  @WholeField({ least: 1, example: 2_020_000, says: 'Upper limit of the mean net while nothing was weighed' })
  assumedUpperMilligrams!: number;

  @WholeField({ most: 10_000, example: 12 })
  packTareGrams!: number;

  @WholeField({ least: 1, most: 100_000, example: 480 })
  packsPerPallet!: number;

  @WholeField({ most: 200_000, example: 25_000 })
  palletTareGrams!: number;

  @TextField({ most: 120, example: 'L{y}{ddd}{line}{shift} {HH}:{mm}', says: 'What the coder prints' })
  codePattern!: string;

  @WholeField({ optional: true, least: 1, most: 240, example: 24, says: 'Absent: no best-before day is given' })
  bestBeforeMonths?: number | null;

  @IdListField({ most: 50, says: 'The grades that the format takes' })
  gradeIds!: string[];
}

export class LetFormatTakeGradeForm {
  @IdField()
  formatId!: string;

  @IdField()
  gradeId!: string;
}
