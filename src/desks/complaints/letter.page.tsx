import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { PrintSheet } from '../../platform/web/kit/print-sheet.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { ComplaintLetter } from './complaint-file.js';

interface LetterProps {
  readonly viewer: Viewer;
  readonly letter: ComplaintLetter;
}

/** The answer to the customer, to be printed: what it is about, and the words of the last answer as they were written. */
export function letterPage({ viewer, letter }: LetterProps): VNode {
  const { complaint, contact, steps, readAt, subject } = letter;
  const answer = steps.findLast(({ kind }) => kind === 'answer') ?? null;
  const title = say('letter-title', { complaint: complaint.number });
  return (
    <Shell title={title} viewer={viewer}>
      <p class="notice">
        <a href={`/quality/complaints/${complaint.id}`}>{say('letter-back', { complaint: complaint.number })}</a>{' '}
        {say('letter-hint')}
      </p>
      <PrintSheet viewer={viewer} title={title} asAt={answer?.doneAt ?? readAt}>
        {contact === null ? null : <p class="reads">{[contact.name, contact.reach ?? ''].join('\n').trim()}</p>}
        <p>
          {say('letter-about', {
            about: say(`complaint-about-${complaint.category}`),
            received: localText(complaint.receivedAt, viewer.timeZone),
          })}
        </p>
        {complaint.codeAsRead === null ? null : <p>{say('letter-code', { code: complaint.codeAsRead })}</p>}
        {subject?.kind === 'lot' ? <p>{say('letter-lot', { lot: subject.name })}</p> : null}
        {answer === null ? (
          <p class="quiet">{say('letter-no-answer')}</p>
        ) : (
          <p class="sentence reads">{answer.words}</p>
        )}
        <p>{say('letter-signature', { site: viewer.siteName })}</p>
      </PrintSheet>
    </Shell>
  );
}
