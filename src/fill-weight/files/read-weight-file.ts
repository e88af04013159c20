import { setImmediate } from 'node:timers/promises';
import { ReadWeights } from '../incoming/read-weights.js';
import { refuseUnfinished } from '../incoming/refuse-unfinished.js';
import type { ReadBatch } from '../receive-weights.js';
import { headingsOf, unpacked } from './file-bytes.js';
import { csvLayoutOf } from './saved-layout.js';
import type { BroughtFile } from './weight-files.js';

/**
 * Reads a file to its end as one batch.
 *
 * A file without a sequence is a series of its own, named by its digest, in which the number of a line is its sequence: the
 * same file counts once. Another file that repeats some of its lines is told by the times of the weights (`isKeyedByTime`).
 *
 * @throws {Refusal} `file-is-no-text`; {BadForm} for columns that it does not have; {NotTaken} `too-many-weights`
 */
export async function readWeightFile(file: BroughtFile, skipsFaults: boolean): Promise<ReadBatch> {
  const { layout, weigher, digest } = file;
  const headings = await headingsOf(file.packed, layout.headerLines);
  const { headerLines } = layout;
  const read = new ReadWeights({ kind: 'table', layout: csvLayoutOf(layout, headings), headerLines });
  let stop = null;
  for await (const piece of unpacked(file.packed)) {
    stop = read.take(piece);
    if (stop !== null) break;
    await setImmediate();
  }
  refuseUnfinished(read, stop ?? read.end(), {});
  const isKeyedByTime = layout.sequenceColumn === null;
  return {
    weigher,
    read,
    series: isKeyedByTime ? `f-${digest.slice(0, 24)}` : layout.series,
    run: null,
    line: null,
    skipsFaults,
    content: { fileId: file.id, skipsFaults },
    fileDigest: digest,
    isKeyedByTime,
  };
}
