import { lastWholeOn } from './demo-plan.js';
import { minuteOfLocal } from './minutes.js';
import type { World } from './world.js';

/** On the last whole day a complaint comes: a lot of two days before is put on hold, part of it long gone. */
export function noteRecall(world: World): void {
  const { diary, ledger } = world;
  const minute = minuteOfLocal(lastWholeOn, '17:20');
  const earlier = ledger.cells.find(({ fromMinute, run }) => fromMinute > minute - 1800 && run.startsWith('L2'));
  if (earlier === undefined) return;
  const reason = 'Complaint: something dark in a pack';
  diary.note(minute, 'quality', { kind: 'hold-lot', hold: 'hold-lot', run: earlier.run, reason });
}
