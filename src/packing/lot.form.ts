import { TextField } from '../platform/web/fields.js';
import { PageQuery } from '../platform/web/page-query.js';

export class LotsQuery extends PageQuery {
  @TextField({ optional: true, most: 120, example: 'L6071', says: 'A code as typed off a pack, or its beginning' })
  code?: string | null;
}

export class FilmLotsQuery extends PageQuery {
  @TextField({ optional: true, most: 60, example: 'F-88123', says: 'The lot on the roll' })
  code?: string | null;
}

export class PrintLotLabelForm {
  @TextField({
    optional: true,
    most: 300,
    example: 'The first one tore',
    says: 'Why another card; needed from the second on',
  })
  reason?: string | null;
}
