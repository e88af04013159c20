import type { Instant } from '../platform/clock.js';
import type { CheckEvent, CheckKind, TestPiece } from './check-words.js';

/** One version of a plan. */
export interface CheckPlanRow {
  readonly id: string;
  readonly planId: string;
  readonly siteId: string;
  readonly lineId: string;
  readonly lineCode: string;
  readonly lineName: string;
  /** Null: whatever the line packs. */
  readonly formatId: string | null;
  readonly formatName: string | null;
  readonly kind: CheckKind;
  readonly station: string;
  readonly everyMinutes: number | null;
  readonly graceMinutes: number;
  readonly events: readonly CheckEvent[];
  readonly testPieces: readonly TestPiece[];
  readonly needsSecondPerson: boolean;
  readonly isInForce: boolean;
  readonly validFrom: Instant;
  /** When the first version of the plan came into force. */
  readonly firstValidFrom: Instant;
}
