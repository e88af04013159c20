import { shifted } from '../../platform/clock.js';
import { PlaceHold } from '../../tracing/place-hold.js';
import type { DemoHand } from '../set-up/demo-hand.js';
import type { LastStep } from './last-hour.js';

/** The stretch that is held: invented. */
const [fromMinutesBeforeClose, untilMinutesBeforeClose] = [70, 40];

/**
 * An invented hold on minutes of a run, placed by a packing-line lead in the last hour and still without a class. Of the run of
 * line 1 that was closed last; a demo that has closed none has none.
 */
export function holdOfMinutes(hand: DemoHand): LastStep {
  return {
    minutesBefore: 35,
    act: async () => {
      const [run] = await hand.reader.sql<{ id: string; closedAt: string }>`
        SELECT r."id", c."closed_at" AS "closedAt" FROM "packing_run" r
        JOIN "packing_run_close" c ON c."run_id" = r."id" AND c."voided_by" IS NULL
        WHERE r."line_id" = ${hand.plant.lines.get('1') ?? ''} ORDER BY c."closed_at" DESC, r."id" LIMIT 1`;
      if (run === undefined) return;
      await hand.give(PlaceHold).execute(hand.asked('lead-M'), {
        ...{ kind: 'packing-run', id: run.id, reason: 'A guard was found off the sealing jaw: seals may be torn' },
        fromAt: shifted(run.closedAt, -fromMinutesBeforeClose * 60_000),
        untilAt: shifted(run.closedAt, -untilMinutesBeforeClose * 60_000),
      });
    },
  };
}
