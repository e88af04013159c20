import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';
import {
  ChoiceField,
  FlagField,
  FormListField,
  IdField,
  InstantField,
  TextField,
  WholeField,
} from '../platform/web/fields.js';
import { mostPacks } from '../packing/packing-run.form.js';

/** No hopper over packing machines holds more: a hundred tonnes. Common practice, no source. */
const mostInside = 100_000_000;

const happenedSays = 'It has happened: recorded even against a rule of the house, and a point is opened';
const lateSays = 'Why this is entered late';

export class SeeLevelForm {
  @ChoiceField(['probe', 'load-cell', 'sight-glass'], { says: 'What the level was seen with' })
  how!: 'probe' | 'load-cell' | 'sight-glass';

  @WholeField({ most: mostInside, example: 250_000, says: 'At least so much is inside' })
  lowerGrams!: number;

  @WholeField({ most: mostInside, example: 350_000, says: 'At most so much is inside' })
  upperGrams!: number;

  @InstantField({ optional: true, says: 'When it was seen; now where absent' })
  seenAt?: string | null;

  @TextField({ optional: true, most: 300, says: lateSays })
  reason?: string | null;
}

export class RunDownForm {
  @WholeField({ most: mostInside, example: 40_000, says: 'No more than so much is left inside' })
  atMostGrams!: number;

  @InstantField({ optional: true, says: 'When it had run down; now where absent' })
  seenAt?: string | null;

  @TextField({ optional: true, most: 300, says: lateSays })
  reason?: string | null;
}

/** Where a run stood when the flow was stopped. */
export class CountAtEmptyForm {
  @TextField({ most: 40, example: 'PR-2026-000042', says: 'Number or id of the run' })
  run!: string;

  @WholeField({ most: mostPacks, example: 19_200, says: 'Accepted packs since the start of the run' })
  packCount!: number;
}

export class ProveEmptyForm {
  @FlagField({ says: 'The flow was stopped, and the way in was safe, before anyone looked' })
  isFlowStopped!: boolean;

  @TextField({ most: 200, example: 'Hatch opened, lamp, walls brushed', says: 'How it was looked into' })
  how!: string;

  @WholeField({ most: mostInside, example: 0, says: 'What stuck inside; 0 cuts the thread' })
  residueGrams!: number;

  @WholeField({ optional: true, most: mostInside, says: 'At most so much stuck; absent: none, or twice what was said' })
  residueUpperGrams?: number | null;

  @IdField({ says: 'Who else looked in' })
  secondPersonId!: string;

  @FormListField(() => CountAtEmptyForm, {
    optional: true,
    least: 0,
    most: 20,
    says: 'Counts of the runs at that time',
  })
  counts?: CountAtEmptyForm[] | null;

  @InstantField({ optional: true, says: 'When it was looked into; now where absent' })
  provenAt?: string | null;

  @FlagField({ optional: true, says: happenedSays })
  happened?: boolean | null;

  @TextField({ optional: true, most: 300, says: lateSays })
  reason?: string | null;
}

export class CorrectEmptyForm {
  @ChoiceField(correctionReasons, { says: 'The hopper was not proven empty, or something in its record is wrong' })
  why!: CorrectionReason;

  @InstantField({ optional: true, says: 'When it was really looked into' })
  provenAt?: string | null;

  @WholeField({ optional: true, most: mostInside, example: 4000, says: 'What really stuck inside' })
  residueGrams?: number | null;

  @WholeField({
    optional: true,
    most: mostInside,
    says: 'At most so much stuck; absent: as it was, or twice what is said',
  })
  residueUpperGrams?: number | null;

  @IdField({ optional: true, says: 'Who else knows; needed for incorrect-data, since it may take bags out of packs' })
  secondPersonId?: string | null;

  @TextField({ most: 300, example: 'The hatch was opened after the run, not before', says: 'What was wrong' })
  reason!: string;
}

export class StartRunForm {
  @IdField({ says: 'Id of the packing line' })
  lineId!: string;

  @IdField({ says: 'Id of the pack format' })
  formatId!: string;

  @InstantField({ optional: true, says: 'When the run started; now where absent' })
  startedAt?: string | null;

  @FlagField({ optional: true, says: happenedSays })
  happened?: boolean | null;

  @TextField({ optional: true, most: 300, says: lateSays })
  reason?: string | null;
}

/** What bins are filled with; the last four may never go back into the product, and are refused with that reason. */
export const binContents = [
  'opened-packs',
  'weight-rejects',
  'start-up-packs',
  'metal-rejects',
  'floor-sweepings',
  'trade-returns',
  'unknown-product',
] as const;
export type BinContent = (typeof binContents)[number];

export class ReworkParentForm {
  @TextField({ most: 40, example: 'PR-2026-000042', says: 'Number or id of the run' })
  run!: string;

  @WholeField({ most: mostPacks, example: 1200, says: 'Count before the first of the packs' })
  fromCount!: number;

  @WholeField({ most: mostPacks, example: 1260, says: 'Count after the last of them' })
  toCount!: number;
}

export class CloseReworkBinForm {
  @ChoiceField(binContents, { says: 'What is in it' })
  content!: BinContent;

  @WholeField({ least: 1, most: 2_000_000, example: 86_000 })
  netGrams!: number;

  @IdField({ optional: true, says: 'Id of the scale; absent: not weighed' })
  scaleId?: string | null;

  @FormListField(() => ReworkParentForm, { most: 50, says: 'Which packs it came from' })
  parents!: ReworkParentForm[];

  @InstantField({ optional: true, says: 'When it was closed; now where absent' })
  closedAt?: string | null;

  @TextField({ optional: true, most: 300, says: lateSays })
  reason?: string | null;
}
