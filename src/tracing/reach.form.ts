import { DayField } from '../platform/web/fields.js';

export class PlantReachQuery {
  @DayField({ optional: true, says: 'The first production day; thirty days before the last where absent' })
  from?: string | null;

  @DayField({ optional: true, says: 'The last production day; that of now where absent' })
  until?: string | null;
}
