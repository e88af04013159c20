import { leaveJob } from '../platform/jobs/outbox.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import type { SampleCover } from './sample-cover.js';

/** The job that later rooms take up when results of a sample came, changed or went; `disposition` does it. */
export const resultsChangedJob = 'results-changed';

/** What the job is told: what the sample stands for, so that a sample that is void by now is found out too. */
export interface ResultsChanged extends SampleCover {
  readonly siteId: string;
  readonly sampleId: string;
}

export async function leaveResultsChanged(
  tx: Tx,
  sample: SampleCover & { readonly id: string; readonly siteId: string },
  job: { readonly id: string; readonly at: string },
): Promise<void> {
  const { id: sampleId, siteId, bagId, dryerId, fromAt, untilAt } = sample;
  await leaveJob(tx, {
    ...job,
    kind: resultsChangedJob,
    payload: { sampleId, siteId, bagId, dryerId, fromAt, untilAt },
  });
}
