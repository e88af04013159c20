import { binContents, type BinContent } from '../../hopper/hopper.form.js';
import { mostPacks } from '../../packing/packing-run.form.js';
import { ChoiceField, FlagField, IdField, TextField, WholeField } from '../../platform/web/fields.js';
import { KilogramsField } from '../../platform/web/kilograms-field.js';

const mostInside = 100_000_000;

export class LineLevelForm {
  @ChoiceField(['probe', 'load-cell', 'sight-glass'])
  how!: 'probe' | 'load-cell' | 'sight-glass';

  @KilogramsField({ most: mostInside })
  lowerGrams!: number;

  @KilogramsField({ most: mostInside })
  upperGrams!: number;
}

export class LineRunDownForm {
  @KilogramsField({ most: mostInside })
  atMostGrams!: number;
}

export class LineEmptyForm {
  @FlagField({ optional: true, says: 'The flow was stopped and the way in made safe before anyone looked' })
  isFlowStopped?: boolean | null;

  @TextField({ most: 200 })
  how!: string;

  @KilogramsField({ most: mostInside })
  residueGrams!: number;

  @IdField()
  secondPersonId!: string;

  @WholeField({ optional: true, most: mostPacks })
  packCount?: number | null;

  @FlagField({ optional: true })
  happened?: boolean | null;
}

export class LineBinForm {
  @ChoiceField(binContents)
  content!: BinContent;

  @KilogramsField({ least: 1, most: 2_000_000 })
  netGrams!: number;

  @IdField({ optional: true })
  scaleId?: string | null;

  @TextField({ most: 40 })
  run!: string;

  @WholeField({ most: mostPacks })
  fromCount!: number;

  @WholeField({ most: mostPacks })
  toCount!: number;
}
