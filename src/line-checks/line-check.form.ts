import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';
import { mostPacks } from '../packing/packing-run.form.js';
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
import { checkActions, checkKinds, type CheckAction, type CheckKind } from './check-words.js';

/** Wider than any weigher shows: what cannot be meant is refused with its likely reason, by the test pack. */
const mostMilligrams = 100_000_000_000;

export class PieceResultForm {
  @TextField({ most: 20, example: 'fe', says: 'Of the plan; `all` where it names no pieces' })
  code!: string;

  @FlagField({ optional: true, example: true, says: 'Absent only where a reading decides' })
  passed?: boolean | null;

  @WholeField({
    optional: true,
    least: -mostMilligrams,
    most: mostMilligrams,
    example: 2_000_400,
    says: 'What the weigher showed for a test pack',
  })
  measuredMilligrams?: number | null;
}

export class CheckLineForm {
  @FormListField(() => PieceResultForm, { optional: true, least: 0, most: 6 })
  results?: PieceResultForm[] | null;

  @TextField({ optional: true, most: 120, example: 'L6071A1', says: 'What is printed, read off a pack' })
  readCode?: string | null;

  @TextField({ optional: true, most: 40, says: 'The bag that is torn: SSCC, short number or id' })
  bag?: string | null;

  @WholeField({ optional: true, most: mostPacks, example: 1260, says: 'The counter, where it was read' })
  packCount?: number | null;

  @ChoiceField(checkActions, { optional: true, says: 'What was done at once; needed when it failed' })
  action?: CheckAction | null;

  @TextField({ optional: true, most: 300, example: 'Head moved back by 4 mm' })
  note?: string | null;

  @IdField({ optional: true, says: 'Who saw it too, where the plan asks for somebody' })
  secondPersonId?: string | null;

  @InstantField({ optional: true, says: 'When it was checked; absent: now' })
  checkedAt?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why it is entered late' })
  reason?: string | null;
}

export class CorrectLineCheckForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 300, example: 'It was the other line' })
  reason!: string;

  @FormListField(() => PieceResultForm, { optional: true, least: 0, most: 6, says: 'The right results' })
  results?: PieceResultForm[] | null;

  @TextField({ optional: true, most: 120, says: 'The right code as read' })
  readCode?: string | null;

  @ChoiceField(checkActions, { optional: true, says: 'Needed when it failed' })
  action?: CheckAction | null;
}

export class LineCheckQuery extends PageQuery {
  @IdField({ optional: true, says: 'Only of this line' })
  lineId?: string | null;

  @IdField({ optional: true, says: 'Only of this plan' })
  planId?: string | null;

  @ChoiceField(checkKinds, { optional: true, says: 'Only of this kind' })
  kind?: CheckKind | null;

  @ChoiceField(['passed', 'failed'], { optional: true, says: 'Only with this result' })
  result?: 'passed' | 'failed' | null;
}
