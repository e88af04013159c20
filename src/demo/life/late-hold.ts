import { minuteOfLocal } from './minutes.js';
import type { World } from './world.js';

/** On the last afternoon a complaint comes: a lot of two days before is put on hold, part of it long gone. */
export function noteRecall(world: World): void {
  const { plan, diary, ledger } = world;
  const today = plan.shifts.at(-1)?.productionOn ?? plan.startOn;
  const minute = minuteOfLocal(today, '17:20');
  const earlier = ledger.cells.find(({ fromMinute, run }) => fromMinute > minute - 1800 && run.startsWith('L2'));
  if (earlier === undefined) return;
  const reason = 'Complaint: something dark in a pack';
  diary.note(minute, 'quality', { kind: 'hold-lot', hold: 'hold-lot', run: earlier.run, reason });
}
