import { IntersectionType } from '@nestjs/swagger';
import { mostPacks } from '../../packing/packing-run.form.js';
import { stopReasons, type StopReason } from '../../packing/line-stop.form.js';
import { removalFates, removalKinds, removalReasons } from '../../packing/removal.form.js';
import {
  ChoiceField,
  ChoiceListField,
  DayField,
  FlagField,
  IdField,
  TextField,
  WholeField,
} from '../../platform/web/fields.js';
import { KilogramsField } from '../../platform/web/kilograms-field.js';
import { PageQuery } from '../../platform/web/page-query.js';
import { CheckOnPageForm } from '../line-checks/check-page.form.js';
import { formKinds, type FormKind } from './form-kinds.js';

export class PaperFormsQuery extends PageQuery {
  @IdField({ optional: true, says: 'The line that is chosen to begin with' })
  line?: string | null;
}

export class PrintPaperFormsForm {
  @IdField({ says: 'The line that the sheets are for' })
  lineId!: string;

  @ChoiceListField(formKinds, { says: 'One sheet of each' })
  kinds!: FormKind[];
}

export class SheetQuery {
  @WholeField({ optional: true, least: 1, most: 100, says: 'The row to key in' })
  row?: number | null;

  @TextField({ optional: true, most: 2, pattern: /^[A-Z]{1,2}$/, form: 'letter', says: 'The check that the row names' })
  check?: string | null;
}

export class StrikeRowForm {
  @TextField({ most: 300, example: 'nothing was written on it' })
  reason!: string;
}

/** `22:40`, and what comes of it in a hurry: `22.40`, `2240`, `7:05`. */
const clockPattern = /^(?:[01]?\d|2[0-3])[:.h]?[0-5]\d$/;

/** Somebody whom the house does not know, or whose hand nobody can read. */
export const notKnown = 'not-known';

/** What every row says: when, and who wrote it. */
export class WrittenRowForm {
  @TextField({ most: 5, pattern: clockPattern, form: 'clock-time', example: '22:40', says: 'The time as written' })
  time!: string;

  @DayField({ optional: true, says: 'Its day; absent: the last time the clock showed it before the rows around it' })
  day?: string | null;

  @TextField({ most: 40, says: 'Id of who wrote it, or `not-known`' })
  writtenBy!: string;

  @ChoiceField(['as-written'], {
    optional: true,
    says: 'Where the records contradict it, it is kept for somebody to look at',
  })
  keep?: 'as-written' | null;
}

/** A time as typed, as the clock shows it. */
export function clockTime(typed: string): string {
  const digits = typed.replaceAll(/\D/g, '').padStart(4, '0');
  return `${digits.slice(0, 2)}:${digits.slice(2)}`;
}

/** What was weighed back, and when the bag was off. */
class WrittenOffForm extends WrittenRowForm {
  @TextField({ optional: true, most: 5, pattern: clockPattern, form: 'clock-time', says: 'When the bag was off' })
  offTime?: string | null;

  @KilogramsField({ optional: true, most: 3_000_000, says: 'Weighed back: gross; absent: it was tipped whole' })
  grossGrams?: number | null;

  @KilogramsField({ optional: true, most: 100_000, says: 'Weighed back: tare' })
  tareGrams?: number | null;

  @IdField({ optional: true, says: 'The scale' })
  scaleId?: string | null;
}

export class WrittenTipForm extends WrittenOffForm {
  @TextField({ most: 40, example: 'B0012344' })
  bag!: string;
}

/** The end of a tip whose beginning was keyed in: its own time is that of the tip. */
export class WrittenTipEndForm {
  @TextField({ most: 5, pattern: clockPattern, form: 'clock-time', says: 'When the bag was off' })
  offTime!: string;

  @KilogramsField({ optional: true, most: 3_000_000 })
  grossGrams?: number | null;

  @KilogramsField({ optional: true, most: 100_000 })
  tareGrams?: number | null;

  @IdField({ optional: true })
  scaleId?: string | null;
}

export class WrittenPalletForm extends WrittenRowForm {
  @WholeField({ least: 1, most: 100_000, example: 480, says: 'Packs on it' })
  packCount!: number;

  @TextField({ most: 24, pattern: /^(\(00\)|00)?\d{18}$/, form: 'the 18 digits of an SSCC' })
  sscc!: string;

  @FlagField({ optional: true, says: 'Its label is printed now, to be stuck over the card' })
  label?: boolean | null;
}

export class WrittenStopForm extends WrittenRowForm {
  @ChoiceField(stopReasons, { says: 'Why it stood' })
  stopReason!: StopReason;

  @TextField({ optional: true, most: 5, pattern: clockPattern, form: 'clock-time', says: 'When it ran again' })
  againTime?: string | null;

  @WholeField({ optional: true, most: mostPacks, says: 'The counter, where it was read' })
  packCount?: number | null;
}

/** The end of a stop whose beginning was keyed in. */
export class WrittenRestartForm {
  @TextField({ most: 5, pattern: clockPattern, form: 'clock-time', says: 'When it ran again' })
  againTime!: string;
}

export class WrittenCountForm extends WrittenRowForm {
  @WholeField({ most: mostPacks, example: 1260, says: 'The counter' })
  packCount!: number;

  @WholeField({ optional: true, most: 100_000, says: 'On belts and tables; absent: not counted' })
  loosePackCount?: number | null;
}

export class WrittenRemovalForm extends WrittenRowForm {
  @ChoiceField(removalKinds)
  kind!: (typeof removalKinds)[number];

  @KilogramsField({ optional: true, least: 1, most: 5_000_000 })
  netGrams?: number | null;

  @WholeField({ optional: true, least: 1, most: 100_000 })
  packCount?: number | null;

  @IdField({ optional: true })
  scaleId?: string | null;

  @ChoiceField(removalReasons)
  removalReason!: (typeof removalReasons)[number];

  @ChoiceField(removalFates)
  fate!: (typeof removalFates)[number];
}

/** A check as it was written: which one, and what a page of it says. */
export class WrittenCheckForm extends IntersectionType(WrittenRowForm, CheckOnPageForm) {
  @IdField({ says: 'The plan of the check' })
  planId!: string;

  @IdField({ says: 'The version of the plan whose pieces the page showed' })
  versionId!: string;
}
