import type { HeavyQuestion } from '../platform/database/heavy-question.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Instant } from '../platform/clock.js';
import '../tracing/tracing.sentences.js';
import '../tracing/tracing.sentences.es.js';
import type { ComplaintRow } from '../complaints/complaints.js';
import type { RecallRow } from '../recalls/recalls.js';
import { dossierOf, type Dossier } from '../tracing/dossier.js';
import { readThread } from '../tracing/read-thread.js';
import { ribbonsOfThread, type Ribbons } from '../tracing/ribbons.js';
import type { Thread } from '../tracing/thread.js';
import { findAnything, type Findings } from './find-subjects.js';
import { choiceKey, type Fit } from './finding.js';

/** A typed code leads to a thread, to a complaint, to a recall, to a choice, or to nothing. */
export type Found =
  | {
      readonly thread: Thread;
      readonly fits: readonly Fit[];
      readonly ribbons?: readonly Ribbons[];
      readonly dossier?: Dossier | null;
    }
  | { readonly complaint: ComplaintRow }
  | { readonly recall: RecallRow }
  | { readonly choices: Findings };

/** A code as it was typed, with what was chosen among its meanings. */
export interface AskedThread {
  readonly siteId: string;
  readonly code: string;
  readonly localTime: string | null;
  readonly meant: string | null;
  /** For its page: what its picture is drawn from, and what else is known around it. */
  readonly isDrawn?: boolean;
  readonly now: Instant;
}

/** Finds what a code means and follows it, both in one view. */
export const question: HeavyQuestion<AskedThread> = {
  url: import.meta.url,
  answer: async (from, asked) => JSON.stringify(await findThread(from, asked)),
};

async function findThread(from: ReadFrom, asked: AskedThread): Promise<Found> {
  const { siteId, code, localTime, meant, now } = asked;
  const found = await findAnything(from, siteId, { code, localTime, now });
  const findings = found.findings.filter((finding) => meant === null || choiceKey(finding) === meant);
  const complaints = found.complaints.filter(({ complaint }) => meant === null || complaint.id === meant);
  const recalls = found.recalls.filter(({ recall }) => meant === null || recall.id === meant);
  const [[only], [complaint], [recall]] = [findings, complaints, recalls];
  const count = findings.length + complaints.length + recalls.length;
  if (count === 1 && complaint !== undefined) return { complaint: complaint.complaint };
  if (count === 1 && recall !== undefined) return { recall: recall.recall };
  const isPlain = only !== undefined && count === 1 && (!only.isDoubtful || meant !== null);
  if (!isPlain) return { choices: { ...found, findings, complaints, recalls } };
  const fits = only.tier === 'as-typed' ? [] : only.fits;
  const thread = await readThread(from, siteId, only.subject, now);
  if (asked.isDrawn !== true) return { thread, fits };
  const ribbons = await ribbonsOfThread(from, siteId, thread);
  return { thread, fits, ribbons, dossier: ribbons.length === 0 ? null : await dossierOf(from, siteId, thread) };
}
