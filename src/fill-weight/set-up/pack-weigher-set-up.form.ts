import { codeForm, codePattern } from '../../plant/code-patterns.js';
import { BadForm } from '../../platform/refusal.js';
import { DecimalField, FlagField, IdField, TextField, WholeField } from '../../platform/web/fields.js';
import type { InstallPackWeigherForm } from '../pack-weigher.form.js';
import { machineCodeField } from '../pack-weigher.form.js';

/** A weigher as its page asks for it: grams, and ticks that are absent where they are not set. */
export class WeigherStepForm {
  @TextField(machineCodeField)
  machineCode!: string;

  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'W1' })
  code!: string;

  @IdField()
  lineId!: string;

  @DecimalField({ least: '0.001', most: '1000', example: '0.2' })
  stepGrams!: string;

  @DecimalField({ least: '0', most: '100000', example: '0.5' })
  errorGrams!: string;

  @WholeField({ optional: true, least: 1, most: 256, example: 14 })
  headCount?: number | null;

  @FlagField({ optional: true })
  countsPacks?: boolean | null;

  @FlagField({ optional: true })
  rejectsPacks?: boolean | null;
}

/** @throws {BadForm} for what is finer than a milligram */
export function installFormOf({ stepGrams, errorGrams, ...rest }: WeigherStepForm): InstallPackWeigherForm {
  return {
    ...rest,
    countsPacks: rest.countsPacks ?? false,
    rejectsPacks: rest.rejectsPacks ?? false,
    stepMilligrams: milligramsOf('stepGrams', stepGrams),
    maximumPermissibleErrorMilligrams: milligramsOf('errorGrams', errorGrams),
  };
}

function milligramsOf(field: string, grams: string): number {
  const [whole = '0', decimals = ''] = grams.split('.');
  if (decimals.length > 3) throw new BadForm([{ field, code: 'weigher-too-fine', facts: { places: 3 } }]);
  return Number(whole) * 1000 + Number(decimals.padEnd(3, '0'));
}

/** A form that asks for nothing but to be sent. */
export class NothingForm {
  @TextField({ optional: true, most: 1 })
  nothing?: string | null;
}
