import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { localText } from '../../platform/web/local-text.js';
import { ProofEntries } from '../quality/proof-entries.js';
import type { RecallFileProps } from './recall-file-props.js';

/** Its signature: given with the proof once more of who gives it, or as it was given. */
export function SignBox({
  viewer,
  file,
  trouble,
  mayRun,
}: RecallFileProps & { readonly mayRun: boolean }): VNode | null {
  const { recall, signing, reportId, names, sequence, way } = file;
  if (signing !== null) {
    return (
      <section class="card" aria-labelledby="signed">
        <h2 id="signed">{say('recall-report-sign')}</h2>
        <p class="sentence">
          {say('recall-report-signed', {
            who: names.get(signing.signedBy ?? '') ?? say('recall-report-not-stated'),
            at: localText(signing.signedAt, viewer.timeZone),
          })}
        </p>
        {signing.explanation === null ? null : <p>{say('recall-report-explained', { words: signing.explanation })}</p>}
        <p class="quiet">{say('recall-signed-says')}</p>
        {reportId === null ? null : <ActLink href={`/papers/${reportId}/file`} says={say('recall-report-file')} />}
      </section>
    );
  }
  if (!mayRun) return <p class="quiet">{say('recall-sign-by-quality')}</p>;
  const form = trouble?.of === 'sign' ? trouble.form : null;
  const isRunning = recall.stoppedAt === null;
  return (
    <section class="card" aria-labelledby="sign">
      <h2 id="sign">{say('recall-sign')}</h2>
      <p>{say(isRunning ? 'recall-sign-running' : 'recall-sign-says')}</p>
      {isRunning ? null : (
        <EntryForm
          viewer={viewer}
          id="sign-form"
          action={`/quality/recalls/${recall.id}/signing`}
          trouble={form}
          seen={{ kind: 'recall', id: recall.id, sequence }}
        >
          <TextEntry
            name="explanation"
            label={say('recall-sign-explanation')}
            hint={say('recall-sign-explanation-hint')}
            maxLength={2000}
            trouble={form}
            isLong
          />
          <ProofEntries way={way} trouble={form} />
          <Act says={say('recall-sign-act')} accessKey="s" />
        </EntryForm>
      )}
    </section>
  );
}
