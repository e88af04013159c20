import { IdField, InstantField, TextField } from '../platform/web/fields.js';

export class StartDryerRunForm {
  @IdField({ says: 'Id of the dryer' })
  dryerId!: string;

  @IdField({ says: 'Id of the grade that it makes' })
  gradeId!: string;

  @InstantField({ optional: true, says: 'When it began; now where absent' })
  startedAt?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why this is entered late', example: 'Network was down' })
  reason?: string | null;
}

export class EndDryerRunForm {
  @TextField({ most: 40, example: 'DR-2026-000012', says: 'Number or id of the dryer run' })
  run!: string;

  @InstantField({ optional: true, says: 'When it ended; now where absent' })
  endedAt?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why this is entered late', example: 'Network was down' })
  reason?: string | null;
}
