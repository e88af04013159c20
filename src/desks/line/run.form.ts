import { mostPacks } from '../../packing/packing-run.form.js';
import { ChoiceField, FlagField, IdField, TextField, WholeField } from '../../platform/web/fields.js';

export class LineStartForm {
  @IdField({ says: 'The format' })
  formatId!: string;

  @FlagField({ optional: true, says: 'It has started already, whatever a rule says' })
  happened?: boolean | null;
}

export class LineCloseForm {
  @WholeField({ most: mostPacks })
  packCount!: number;

  @WholeField({ most: 100_000 })
  loosePackCount!: number;
}

export class LineFilmForm {
  @TextField({ most: 60 })
  film!: string;

  @ChoiceField(['film', 'preprinted-bag', 'label', 'glue'], { optional: true })
  kind?: 'film' | 'preprinted-bag' | 'label' | 'glue' | null;

  @TextField({ optional: true, most: 60 })
  supplierCode?: string | null;

  @WholeField({ optional: true, most: mostPacks })
  packCount?: number | null;
}

export class LineCodeForm {
  @TextField({ most: 120 })
  code!: string;

  @WholeField({ optional: true, most: mostPacks })
  packCount?: number | null;
}

export class FilmQuery {
  @TextField({ optional: true, most: 60, says: 'The roll that was scanned' })
  film?: string | null;
}
