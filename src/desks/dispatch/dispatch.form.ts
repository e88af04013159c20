import { IsOptional } from 'class-validator';
import { Transform } from 'class-transformer';
import { correctionReasons, type CorrectionReason } from '../../journal/void-fact.js';
import { fates } from '../../dispatch/return.form.js';
import { returnCodes, shortCodes, type ReturnCode, type ShortCode } from '../../dispatch/short-reasons.js';
import { IsArray, IsIn, IsString } from '../../platform/web/checks.js';
import {
  ChoiceField,
  DayField,
  FlagField,
  IdField,
  InstantField,
  TextField,
  WholeField,
} from '../../platform/web/fields.js';

export class ScanForm {
  @TextField({ most: 200, says: 'What was scanned' })
  scan!: string;
}

export class LastScanQuery {
  @IdField({ optional: true, says: 'The unit that was scanned last' })
  unit?: string | null;
}

/** A plain form sends one tick bare, and none not at all. */
const ticked = Transform(({ value }: { value: unknown }): unknown => (typeof value === 'string' ? [value] : value));

export class VehicleCheckPageForm {
  @TextField({ most: 20, example: 'AQ 123 D' })
  registration!: string;

  @TextField({ most: 30, example: 'H-01' })
  haulierCode!: string;

  /** Codes of the points that are fine; what is not ticked is not. */
  @IsOptional()
  @IsArray({ message: 'field-not-list' })
  @IsString({ each: true, message: 'field-not-text' })
  @ticked
  fine?: string[];
}

export class UnloadPageForm {
  @IdField({ says: 'The pallet or bag' })
  unit!: string;

  @TextField({ most: 200, example: 'Wrong lot for this customer' })
  reason!: string;

  @IdField({ optional: true, says: 'Where it is put' })
  placeId?: string | null;
}

export const closeSteps = ['look', 'print'] as const;

export class ClosePageForm {
  @IsIn(closeSteps, { message: 'field-not-choice' })
  step!: (typeof closeSteps)[number];

  @TextField({ most: 40, example: 'S123456', says: 'Number of the seal' })
  seal!: string;

  @ChoiceField(shortCodes, { optional: true, says: 'Why less is on than was ordered' })
  shortCode?: ShortCode | null;

  @TextField({ optional: true, most: 200, says: 'The same in words' })
  shortReason?: string | null;

  @TextField({ optional: true, most: 500, says: 'Printed on the note as it is' })
  remarks?: string | null;
}

export class LeavePageForm {
  @InstantField({ optional: true })
  leftAt?: string | null;

  @TextField({ optional: true, most: 200, says: 'Why it comes late' })
  reason?: string | null;

  @FlagField({ optional: true, says: 'It is gone already' })
  isGone?: boolean | null;
}

export class VoidPageForm {
  @ChoiceField(correctionReasons, { says: 'Did it not leave so, or was the paper wrong' })
  correction!: CorrectionReason;

  @TextField({ most: 200, example: 'Seal number misread' })
  reason!: string;

  @TextField({ most: 40, says: 'The note that is meant' })
  note!: string;

  @TextField({ optional: true, most: 40, says: 'The right seal, for a new version' })
  seal?: string | null;
}

/** So many lines fit on the page; an order with more goods goes through the interface. */
export const planLines = [1, 2, 3, 4, 5, 6] as const;

export class PlanPageForm {
  @IdField({ optional: true, says: 'The customer' })
  customerId?: string | null;

  @TextField({ most: 40, example: '4500123', says: 'The customer’s order number' })
  orderNumber!: string;

  @DayField({ says: 'The day on which it is to leave' })
  plannedOn!: string;

  @InstantField({ optional: true, says: 'When the vehicle is to leave' })
  leavesAt?: string | null;

  @TextField({ optional: true, most: 200, says: 'Why it changes' })
  reason?: string | null;

  @IdField({ optional: true })
  goods1?: string | null;
  @WholeField({ optional: true, least: 1, most: 1_000_000 })
  count1?: number | null;
  @IdField({ optional: true })
  goods2?: string | null;
  @WholeField({ optional: true, least: 1, most: 1_000_000 })
  count2?: number | null;
  @IdField({ optional: true })
  goods3?: string | null;
  @WholeField({ optional: true, least: 1, most: 1_000_000 })
  count3?: number | null;
  @IdField({ optional: true })
  goods4?: string | null;
  @WholeField({ optional: true, least: 1, most: 1_000_000 })
  count4?: number | null;
  @IdField({ optional: true })
  goods5?: string | null;
  @WholeField({ optional: true, least: 1, most: 1_000_000 })
  count5?: number | null;
  @IdField({ optional: true })
  goods6?: string | null;
  @WholeField({ optional: true, least: 1, most: 1_000_000 })
  count6?: number | null;
}

export class ReturnPageForm {
  @ChoiceField(returnCodes, { says: 'Why it comes back' })
  why!: ReturnCode;

  @TextField({ optional: true, most: 500, says: 'In words' })
  remarks?: string | null;

  @IdField({ says: 'Where it is put, apart from the stock' })
  placeId!: string;

  /** Ids of pallets and bags that come back whole. */
  @IsOptional()
  @IsArray({ message: 'field-not-list' })
  @IsString({ each: true, message: 'field-not-text' })
  @ticked
  whole?: string[];

  @FlagField({ optional: true, says: 'The customer need not pay what comes back' })
  isCredited?: boolean | null;

  @TextField({ optional: true, most: 60, example: 'L6071A1', says: 'Loose packs: their lot' })
  lot?: string | null;

  @WholeField({ optional: true, least: 1, most: 1_000_000, says: 'So many loose packs' })
  packCount?: number | null;
}

export class DecideReturnPageForm {
  @IdField({ says: 'The unit that came back' })
  unit!: string;

  @ChoiceField(fates)
  fate!: (typeof fates)[number];

  @TextField({ most: 200 })
  reason!: string;
}
