import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';
import { heaviestGrams } from '../drying/bag-fill.form.js';
import {
  ChoiceField,
  FlagField,
  FormListField,
  IdField,
  InstantField,
  TextField,
  WholeField,
} from '../platform/web/fields.js';
import { PageQuery } from '../platform/web/page-query.js';

const ways = ['scan', 'typed', 'photo', 'witness'] as const;

const openedSays = 'When the spout was opened; now where absent';
const offSays = 'The bag is off and empty; absent: it hangs, and its end is recorded later';
const happenedSays = 'It has happened: recorded even against a rule of the house, and a point is opened';
const lateSays = 'Why this is entered late';

export class TipBagForm {
  @TextField({ most: 40, example: 'B0012344', says: 'Short number, SSCC or id of the bag' })
  bag!: string;

  @IdField({ says: 'Id of the hopper' })
  hopperId!: string;

  @InstantField({ optional: true, says: openedSays })
  openedAt?: string | null;

  @FlagField({ optional: true, says: offSays })
  isOff?: boolean | null;

  @InstantField({ optional: true, says: 'When the bag was off, empty' })
  offAt?: string | null;

  @ChoiceField(ways, { optional: true, says: 'How the bag was told apart; a scan where absent' })
  identifiedBy?: (typeof ways)[number] | null;

  @IdField({ optional: true, says: 'Who else saw it, where its number was not scanned' })
  secondPersonId?: string | null;

  @FlagField({ optional: true, says: happenedSays })
  happened?: boolean | null;

  @FlagField({ optional: true, says: 'It was refused to this person here lately, and is in all the same' })
  alreadyIn?: boolean | null;

  @TextField({ optional: true, most: 300, says: lateSays, example: 'The tablet had no network' })
  reason?: string | null;
}

export class CandidateForm {
  @TextField({ most: 40, example: 'B0012344', says: 'Short number, SSCC or id of the bag' })
  bag!: string;
}

export class TipOneOfSeveralForm {
  @FormListField(() => CandidateForm, { least: 2, most: 20, says: 'The bags that it may have been' })
  candidates!: CandidateForm[];

  @IdField({ says: 'Id of the hopper' })
  hopperId!: string;

  @IdField({ says: 'Who else saw it' })
  secondPersonId!: string;

  @ChoiceField(['photo', 'witness', 'typed'], { optional: true, says: 'What there is of its number' })
  identifiedBy?: 'photo' | 'witness' | 'typed' | null;

  @InstantField({ optional: true, says: openedSays })
  openedAt?: string | null;

  @FlagField({ optional: true, says: offSays })
  isOff?: boolean | null;

  @InstantField({ optional: true, says: 'When the bag was off, empty' })
  offAt?: string | null;

  @FlagField({ optional: true, says: happenedSays })
  happened?: boolean | null;

  @TextField({ optional: true, most: 300, says: lateSays })
  reason?: string | null;
}

export class TipReworkBinForm {
  @TextField({ most: 40, example: 'RB-2026-000007', says: 'Number or id of the rework bin' })
  bin!: string;

  @IdField({ says: 'Id of the hopper' })
  hopperId!: string;

  @InstantField({ optional: true, says: openedSays })
  openedAt?: string | null;

  @FlagField({ optional: true, says: happenedSays })
  happened?: boolean | null;

  @TextField({ optional: true, most: 300, says: lateSays })
  reason?: string | null;
}

export class EndTipForm {
  @InstantField({ optional: true, says: 'When the bag was off; now where absent' })
  offAt?: string | null;

  @WholeField({
    optional: true,
    most: heaviestGrams,
    example: 312_500,
    says: 'Weighed back: gross; absent: it is empty',
  })
  grossGrams?: number | null;

  @WholeField({ optional: true, most: 100_000, example: 1_800, says: 'Weighed back: tare' })
  tareGrams?: number | null;

  @FlagField({ optional: true, says: "The tare was not weighed but taken from the bag's type" })
  isPresetTare?: boolean | null;

  @IdField({ optional: true, says: 'Weighed back: id of the scale' })
  scaleId?: string | null;

  @IdField({ optional: true, says: 'Id of the store place where the opened bag was put' })
  placeId?: string | null;

  @FlagField({ optional: true, says: happenedSays })
  happened?: boolean | null;

  @TextField({ optional: true, most: 300, says: lateSays })
  reason?: string | null;
}

export class SettleCandidateForm {
  @TextField({ most: 40, example: 'B0012344', says: 'The bag that it was: short number, SSCC or id' })
  bag!: string;

  @TextField({ most: 300, says: 'How that was found out', example: 'Its label lay beside the hoist' })
  reason!: string;
}

export class CorrectTipForm {
  @ChoiceField(correctionReasons, { says: 'The tip did not occur, or something in its record is wrong' })
  why!: CorrectionReason;

  @TextField({ optional: true, most: 40, example: 'B0012344', says: 'The bag that it really was' })
  bag?: string | null;

  @InstantField({ optional: true, says: 'When the spout was really opened' })
  openedAt?: string | null;

  @InstantField({ optional: true, says: 'When the bag was really off' })
  offAt?: string | null;

  @TextField({ most: 300, says: 'What was wrong', example: 'The neighbour’s label was scanned' })
  reason!: string;
}

export class TipQuery extends PageQuery {
  @IdField({ optional: true, says: 'Only of this hopper' })
  hopperId?: string | null;
}
