import {
  ChoiceField,
  DayField,
  FormListField,
  IdField,
  InstantField,
  TextField,
  WholeField,
} from '../platform/web/fields.js';
import { correctionReasons } from '../journal/void-fact.js';
import { printedForm, printedPattern } from './code-patterns.js';
import { ruleKinds } from './rule-kinds.js';

const shiftWord = '(?:-|[A-Z0-9]{1,4})';

export class ShiftForm {
  @TextField({ most: 4, pattern: printedPattern, form: printedForm, example: 'M', says: 'As the coder prints it' })
  code!: string;

  @TextField({ most: 40, example: 'Morning' })
  name!: string;

  @TextField({ pattern: /^([01]\d|2[0-3]):[0-5]\d$/, form: 'clock-time', example: '06:00' })
  startTime!: string;
}

export class CrewForm {
  @TextField({ most: 20, example: 'Red' })
  crew!: string;

  @TextField({
    most: 1000,
    pattern: new RegExp(`^${shiftWord}(?: +${shiftWord})*$`),
    form: 'cycle',
    example: 'M M A A N N N - -',
  })
  cycle!: string;
}

export class SetShiftPatternForm {
  @InstantField({ optional: true, says: 'From when on; absent: now' })
  validFrom?: string | null;

  @FormListField(() => ShiftForm, { most: 24, says: 'In their order; the first starts with the production day' })
  shifts!: ShiftForm[];

  @DayField({ optional: true, says: 'The production day that each crew’s cycle begins with' })
  rotaStartsOn?: string | null;

  @FormListField(() => CrewForm, { optional: true, most: 12 })
  crews?: CrewForm[] | null;
}

export class CheckPointForm {
  @TextField({ most: 40, pattern: /^[a-z][a-z0-9-]*$/, form: 'small-code', example: 'clean' })
  code!: string;

  @TextField({ most: 200, example: 'The loading space is clean' })
  text!: string;
}

export class SetRuleSetForm {
  @ChoiceField(ruleKinds)
  kind!: string;

  @InstantField({ optional: true, says: 'From when on; absent: now' })
  validFrom?: string | null;

  @FormListField(() => CheckPointForm, { optional: true, most: 40, says: 'For a vehicle check: all its points' })
  checkPoints?: CheckPointForm[] | null;

  @WholeField({ optional: true, most: 10_000, says: 'For tipping at risk: bags that may wait for results at once' })
  mostWaitingBagCount?: number | null;

  @WholeField({ optional: true, says: 'For tipping at risk: grams that may wait for results at once' })
  mostWaitingGrams?: number | null;

  @WholeField({ optional: true, most: 240, says: 'For times: minutes that a scanned bag may have been opened before' })
  scannedEarlierMinutes?: number | null;

  @WholeField({ optional: true, most: 240, says: 'For times: minutes that a stated time may be too late' })
  statedEarlierMinutes?: number | null;

  @WholeField({ optional: true, most: 240, says: 'For times: minutes for which a bag drains at most' })
  laterMinutes?: number | null;

  @WholeField({ optional: true, most: 240, says: 'For times: minutes by which a hand count may be off' })
  handCountMinutes?: number | null;

  @WholeField({ optional: true, least: 1, most: 2, says: 'For a concession: persons who must stand behind it' })
  concessionPersonCount?: number | null;
}

export const correctableKinds = [
  'hopper-line',
  'coder-clock',
  'pack-format-grade',
  'scale-check',
  'scale-verification',
  'specification',
  'shift-pattern',
  'rule-set',
] as const;
export type CorrectableKind = (typeof correctableKinds)[number];

export class CorrectPlantRecordForm {
  @ChoiceField(correctableKinds)
  kind!: string;

  @IdField()
  id!: string;

  @ChoiceField(correctionReasons)
  correctionReason!: string;

  @TextField({ most: 300, example: 'The other hopper was meant' })
  reason!: string;
}
