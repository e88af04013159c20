import { TextField } from '../../platform/web/fields.js';

export class PalletsQuery {
  @TextField({ optional: true, most: 60, says: 'One of two pallets' })
  one?: string | null;

  @TextField({ optional: true, most: 60, says: 'The other' })
  other?: string | null;
}
