import { ChoiceField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import { mostPacks } from './packing-run.form.js';

/**
 * Why a line stands. Our own list of words that packers use (common practice, no source). `not-said`: stopped with one
 * touch; the reason comes later.
 */
export const stopReasons = [
  'jam',
  'film-change',
  'no-product',
  'no-pallets',
  'coder',
  'weigher',
  'seal',
  'cleaning',
  'break',
  'maintenance',
  'other',
  'not-said',
] as const;
export type StopReason = (typeof stopReasons)[number];

export class StopLineForm {
  @TextField({ most: 40, example: 'PR-2026-000042', says: 'Number or id of the run' })
  run!: string;

  @ChoiceField(stopReasons, { says: 'Why it stands' })
  stopReason!: StopReason;

  @WholeField({ optional: true, most: mostPacks, example: 1260, says: 'The counter, where it was read' })
  packCount?: number | null;

  @InstantField({ optional: true, says: 'When it came to a stand; absent: now' })
  stoppedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}

export class StartLineAgainForm {
  @InstantField({ optional: true, says: 'When it ran again; absent: now' })
  startedAgainAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}

export class StopsQuery {
  @TextField({ most: 40, example: 'PR-2026-000042', says: 'Number or id of the run' })
  run!: string;
}
