import { IdField, TextField, WholeField } from '../../platform/web/fields.js';

/** More packs than this are no sample to weigh beside a running line. Our own value, no source. */
export const mostSamplePacks = 20;

export class SetHandPlanForm {
  @IdField()
  lineId!: string;

  @IdField({ optional: true, says: 'Absent: every format that has no plan of its own' })
  formatId?: string | null;

  @WholeField({ least: 5, most: 1440, example: 30, says: 'From one sample to the next' })
  everyMinutes!: number;

  @WholeField({ least: 2, most: mostSamplePacks, example: 5, says: 'How many packs are weighed' })
  packCount!: number;

  @WholeField({ most: 240, example: 10, says: 'How long after it is due it counts as overdue' })
  graceMinutes!: number;
}

export class EndHandPlanForm {
  @IdField()
  lineId!: string;

  @IdField({ optional: true, says: 'Absent: the plan of all formats' })
  formatId?: string | null;

  @TextField({ most: 300, example: 'The line has a pack weigher now' })
  reason!: string;
}
