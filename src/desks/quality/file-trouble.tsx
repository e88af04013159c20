import type { VNode } from 'preact';
import { ChangedSince } from '../../journal/changed-since.js';
import { entriesSince } from '../../journal/journal-entries.js';
import { namesOf } from '../../people/people.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import type { Viewer } from '../../platform/web/request.js';

/** Why a form of a file is shown again; of a page that moved on, what changed since. */
export interface FileTrouble {
  /** Which form of the page was sent. */
  readonly of: string;
  readonly form: FormTrouble;
  readonly changed: VNode | null;
}

/** Adds, to a form that came from a page that had moved on, what the journal has said since. */
export async function fileTrouble(from: ReadFrom, viewer: Viewer, of: string, form: FormTrouble): Promise<FileTrouble> {
  const { kind, id, seenSequence } = form.facts;
  const isStale = form.code === 'page-is-stale' && typeof kind === 'string' && typeof id === 'string';
  if (!isStale) return { of, form, changed: null };
  const entries = await entriesSince(from, viewer.actor.siteId, { kind, id }, Number(seenSequence));
  const names = await namesOf(
    from,
    entries.flatMap(({ personId }) => personId ?? []),
  );
  return { of, form, changed: <ChangedSince entries={entries} names={names} timeZone={viewer.timeZone} /> };
}
