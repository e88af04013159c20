import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';
import {
  ChoiceField,
  DecimalField,
  FormListField,
  IdField,
  InstantField,
  TextField,
  WholeField,
} from '../platform/web/fields.js';
import { KilogramsField } from '../platform/web/kilograms-field.js';

export const modelKinds = ['first-in-first-out', 'pour-and-drain', 'stirred-zones'] as const;
export type ModelKind = (typeof modelKinds)[number];

/** How many samples a trial may have; the fit needs 8. Own value, no source. */
export const mostSamples = 200;

const lateSays = 'Why this is entered late';
const colour = { least: '0', most: '100000', example: '31.5' } as const;

/** A sample is placed by kilograms, or by the number of the pack; never by both. */
export class TrialSampleForm {
  @KilogramsField({ optional: true, says: 'Kilograms packed since the second bag began to go in' })
  atGrams?: number | null;

  @WholeField({ optional: true, least: 1, most: 1_000_000, example: 120, says: 'The how manyth pack since then' })
  packNumber?: number | null;

  @DecimalField({ ...colour, says: 'Colour in solution, IU' })
  colourIu!: string;
}

/** What is said of a trial, but for its samples. */
export class TrialHeadForm {
  @TextField({ most: 40, says: 'Filled all that moves when the other began: number, SSCC or id' })
  beforeBag!: string;

  @TextField({ most: 40, says: 'Lasted until the last sample; the first of several alike' })
  afterBag!: string;

  @DecimalField({ ...colour, says: 'Colour of the first bag, IU' })
  beforeColourIu!: string;

  @DecimalField({ ...colour, says: 'Colour of the second bag, IU' })
  afterColourIu!: string;

  @DecimalField({
    least: '0.01',
    most: '10000',
    example: '0.4',
    says: 'Standard uncertainty of each colour, IU: r/2.8',
  })
  standardIu!: string;

  @WholeField({
    optional: true,
    least: 1,
    most: 100_000,
    example: 1000,
    says: 'Grams in a pack, where packs are counted',
  })
  packGrams?: number | null;

  @KilogramsField({ optional: true, example: '650', says: 'Kilograms inside when the second bag began to go in' })
  insideGrams?: number | null;

  @TextField({ optional: true, most: 500, example: 'Both lines ran at full speed' })
  note?: string | null;

  @InstantField({ optional: true, says: 'When the second bag began to go in; absent: now' })
  madeAt?: string | null;

  @TextField({ optional: true, most: 300, says: lateSays })
  reason?: string | null;
}

export class RecordTrialForm extends TrialHeadForm {
  @FormListField(() => TrialSampleForm, { most: mostSamples, says: 'What was taken behind the hopper, in any order' })
  samples!: TrialSampleForm[];
}

export class ChooseFlowModelForm {
  @ChoiceField(modelKinds)
  kind!: ModelKind;

  @IdField({ optional: true, says: 'The trial that it rests on; needed for all but first in, first out' })
  trialId?: string | null;

  @InstantField({ optional: true, says: 'Since when the hopper flows so; absent: now' })
  validFrom?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why; needed where the time is set back' })
  reason?: string | null;
}

export class WithdrawFlowFactForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 300, example: 'The samples were swapped' })
  reason!: string;
}
