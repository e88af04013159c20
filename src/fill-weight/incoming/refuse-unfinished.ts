import { BadForm, NotTaken } from '../../platform/refusal.js';
import { mostWeights, type BatchFault, type ReadWeights } from './read-weights.js';

/** What whoever sent a batch said of it, so that one that was cut off is known. */
interface Announced {
  readonly count?: number | null;
  readonly ends?: 'newline' | null;
}

/** @throws {NotTaken} `too-many-weights`, `weights-not-as-announced`, `body-cut-off`; {BadForm} for a header in error */
export function refuseUnfinished(read: ReadWeights, stop: BatchFault | null, { count, ends }: Announced): void {
  if (stop === 'too-many-weights') throw new NotTaken('too-large', 'too-many-weights', { most: mostWeights });
  if (stop === 'header-in-error') {
    throw new BadForm(read.faults.problems(), 'weights-in-error', { wrong: read.faults.count, lines: 1 });
  }
  const announced = count ?? null;
  if (announced !== null && announced !== read.lineCount) {
    throw new NotTaken('bad-body', 'weights-not-as-announced', { announced, found: read.lineCount });
  }
  if (ends === 'newline' && !read.endsWithNewline) throw new NotTaken('bad-body', 'body-cut-off');
}
