import { stopReasons, type StopReason } from '../../packing/line-stop.form.js';
import { mostPacks } from '../../packing/packing-run.form.js';
import { removalFates, removalKinds, removalReasons } from '../../packing/removal.form.js';
import { ChoiceField, FlagField, IdField, InstantField, TextField, WholeField } from '../../platform/web/fields.js';
import { KilogramsField } from '../../platform/web/kilograms-field.js';

export class ScanQuery {
  @TextField({ optional: true, most: 200, says: 'What was scanned or typed' })
  scan?: string | null;
}

export class ChooseLineQuery {
  @TextField({ optional: true, most: 5, says: 'Choose a line anew, whichever was remembered' })
  choose?: string | null;
}

/** A tip as the line's pages send it; the hopper is the line's. */
export class LineTipForm {
  @TextField({ most: 200, example: 'B0012344' })
  bag!: string;

  @FlagField({ optional: true, says: 'The bag is off and empty; absent: it hangs' })
  isOff?: boolean | null;

  @InstantField({ optional: true, says: 'When the spout was opened; absent: now' })
  openedAt?: string | null;

  @FlagField({ optional: true, says: 'It was refused to this person here lately, and is in all the same' })
  alreadyIn?: boolean | null;

  @FlagField({ optional: true, says: 'It has happened, whatever a rule of the house says' })
  happened?: boolean | null;

  @TextField({ optional: true, most: 300 })
  reason?: string | null;
}

/** The bag whose refusal somebody goes on from. */
export class RefusedBagForm {
  @TextField({ most: 40, example: 'B0012344' })
  bag!: string;
}

export class LineOffForm {
  @KilogramsField({ optional: true, most: 3_000_000, says: 'Weighed back: gross; absent: it is empty' })
  grossGrams?: number | null;

  @KilogramsField({ optional: true, most: 100_000, says: 'Weighed back: tare' })
  tareGrams?: number | null;

  @IdField({ optional: true, says: 'The scale' })
  scaleId?: string | null;

  @InstantField({ optional: true, says: 'When it was off; absent: now' })
  offAt?: string | null;

  @TextField({ optional: true, most: 300 })
  reason?: string | null;
}

export class LineUnreadForm {
  @TextField({ most: 40, example: 'B0012344' })
  first!: string;

  @TextField({ most: 40, example: 'B0012352' })
  second!: string;

  @TextField({ optional: true, most: 40 })
  third?: string | null;

  @TextField({ optional: true, most: 40 })
  fourth?: string | null;

  @IdField({ says: 'Who else saw it' })
  secondPersonId!: string;

  @InstantField({ optional: true })
  openedAt?: string | null;

  @TextField({ optional: true, most: 300 })
  reason?: string | null;
}

export class LinePalletForm {
  @TextField({ most: 40, example: 'PR-2026-000042' })
  run!: string;

  @WholeField({ optional: true, least: 1, most: 100_000, says: 'So many packs stand on it; absent: it is full' })
  packCount?: number | null;
}

export class LineStopForm {
  @TextField({ most: 40, example: 'PR-2026-000042' })
  run!: string;

  @ChoiceField(stopReasons, { optional: true, says: 'Why; it can be said later' })
  stopReason?: StopReason | null;
}

export class StopReasonForm {
  @ChoiceField(stopReasons, { says: 'Why it stands' })
  stopReason!: StopReason;
}

export class RunsAgainForm {
  @InstantField({ optional: true, says: 'When it ran again; absent: now' })
  startedAgainAt?: string | null;
}

export class LineRemovalForm {
  @ChoiceField(removalKinds)
  kind!: (typeof removalKinds)[number];

  @KilogramsField({ optional: true, least: 1, most: 5_000_000, says: 'Net, weighed' })
  netGrams?: number | null;

  @WholeField({ optional: true, least: 1, most: 100_000, says: 'Whole packs' })
  packCount?: number | null;

  @IdField({ optional: true, says: 'The scale' })
  scaleId?: string | null;

  @ChoiceField(removalReasons)
  removalReason!: (typeof removalReasons)[number];

  @ChoiceField(removalFates)
  fate!: (typeof removalFates)[number];

  @InstantField({ optional: true })
  removedAt?: string | null;

  @TextField({ optional: true, most: 300 })
  reason?: string | null;
}

export class LineCountForm {
  @WholeField({ most: mostPacks, example: 1260 })
  packCount!: number;

  @WholeField({ optional: true, most: 100_000, example: 46, says: 'On belts and tables; absent: not counted' })
  loosePackCount?: number | null;

  @InstantField({ optional: true, says: 'When they were counted; absent: now' })
  countedAt?: string | null;

  @TextField({ optional: true, most: 300 })
  reason?: string | null;
}
