import { FlagField, IdField, TextField, WholeField } from '../platform/web/fields.js';
import { codeForm, codePattern } from '../plant/code-patterns.js';

/** What a machine is called in the records. */
export const machineCodeField = {
  most: 30,
  pattern: /^[A-Za-z0-9][A-Za-z0-9.-]{1,29}$/,
  form: 'person-code',
  example: 'pack-weigher-1',
} as const;

/** A weigher together with its machine. */
export type InstallPackWeigherForm = Omit<AddPackWeigherForm, 'deviceId'> & { readonly machineCode: string };

export class AddPackWeigherForm {
  @IdField({ says: 'The machine whose token sends the weights' })
  deviceId!: string;

  @IdField({ says: 'The line whose packs it weighs' })
  lineId!: string;

  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'W1' })
  code!: string;

  @WholeField({ least: 1, most: 1_000_000, example: 200, says: 'The step of its display' })
  stepMilligrams!: number;

  @WholeField({ most: 100_000_000, example: 500, says: 'How far off a weighing may be, by its verification or test' })
  maximumPermissibleErrorMilligrams!: number;

  @WholeField({ optional: true, least: 1, most: 256, example: 14, says: 'Heads that it tells apart; absent: none' })
  headCount?: number | null;

  @FlagField({ says: 'Its sequence counts every pack of the line' })
  countsPacks!: boolean;

  @FlagField({ says: 'It takes packs out by itself and marks them' })
  rejectsPacks!: boolean;
}

export class WithdrawPackWeigherForm {
  @TextField({ most: 300, example: 'Moved to line 2' })
  reason!: string;
}

export class WeigherWayForm {
  @FlagField({ optional: true, says: 'Weights may come from it by MQTT; absent: they may not' })
  takesMqtt?: boolean | null;
}
