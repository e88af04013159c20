import { WholeField } from '../../platform/web/fields.js';

export class SetSilenceForm {
  @WholeField({
    optional: true,
    least: 2,
    most: 1440,
    example: 10,
    says: 'How long after packs were counted their weights must have come; absent: nobody waits for them',
  })
  silentAfterMinutes?: number | null;
}
