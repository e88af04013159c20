import type { VNode } from 'preact';
import { answerWays, type StepKind } from '../../complaints/complaint-words.js';
import type { StepRow } from '../../complaints/complaints.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { localText } from '../../platform/web/local-text.js';
import type { ComplaintFileProps } from './complaint-file-props.js';
import { WithdrawForm } from './withdraw-box.js';

/** What was found and done, in order; each can be withdrawn with its reason. */
export function Steps({ viewer, file, trouble }: ComplaintFileProps): VNode {
  const { steps, names, complaint } = file;
  const mayWithdraw = mayDo(viewer.actor.roles, 'handle-complaints') && complaint.status !== 'withdrawn';
  const last = steps.at(-1);
  return (
    <section class="card" aria-labelledby="steps">
      <h2 id="steps">{say('complaint-steps')}</h2>
      {steps.length === 0 ? <p class="quiet">{say('complaint-no-steps')}</p> : null}
      {steps.map((step) => (
        <div key={step.id}>
          <p>
            <strong>{say(`complaint-step-${step.kind}`)}</strong>
            {step.way === null ? '' : ` (${say(`answer-way-${step.way}`)})`}
            {step.words === null ? '' : `: ${step.words}`}{' '}
            <span class="quiet">{whoAndWhen(step, names, viewer.timeZone)}</span>
          </p>
          {mayWithdraw && (complaint.status !== 'closed' || step.id === last?.id) ? (
            <WithdrawForm
              viewer={viewer}
              id={`withdraw-${step.id}`}
              summary={say('complaint-step-withdraw')}
              action={`/quality/complaints/${complaint.id}/steps/${step.id}/withdrawal`}
              trouble={trouble?.of === step.id ? trouble.form : null}
            />
          ) : null}
        </div>
      ))}
      {mayWithdraw ? <ActLink href={`/quality/complaints/${complaint.id}/letter`} says={say('letter-print')} /> : null}
    </section>
  );
}

function whoAndWhen({ personId, doneAt }: StepRow, names: ReadonlyMap<string, string>, timeZone: string): string {
  const who = names.get(personId ?? '');
  return [who, localText(doneAt, timeZone)].filter((text) => text !== undefined).join(', ');
}

/** What can be done next, each with its words. */
export function StepBox({ viewer, file, trouble }: ComplaintFileProps): VNode {
  const { complaint, steps } = file;
  const form = trouble?.of === 'step' ? trouble.form : null;
  const next = nextSteps(file);
  const common = { viewer, complaintId: complaint.id, sequence: file.sequence, form };
  return (
    <section class="card" aria-labelledby="next-step">
      <h2 id="next-step">{say('complaint-next')}</h2>
      {complaint.status === 'open' || complaint.status === 'reopened' ? (
        <StepForm {...common} kind="look-into" isAsked={steps.length === 0} />
      ) : null}
      {next.map((kind) => (
        <details key={kind} open={form?.entered['kind'] === kind}>
          <summary>{say(`complaint-step-do-${kind}`)}</summary>
          <StepForm {...common} kind={kind} isAsked={false} />
        </details>
      ))}
    </section>
  );
}

function nextSteps({ complaint: { status } }: ComplaintFileProps['file']): readonly StepKind[] {
  return status === 'closed' ? ['reopen'] : ['cause', 'action', 'answer', 'close'];
}

interface StepFormProps {
  readonly viewer: ComplaintFileProps['viewer'];
  readonly complaintId: string;
  readonly sequence: number;
  readonly kind: StepKind;
  readonly isAsked: boolean;
  readonly form: FormTrouble | null;
}

function StepForm({ viewer, complaintId, sequence, kind, isAsked, form }: StepFormProps): VNode {
  const trouble = form?.entered['kind'] === kind ? form : null;
  return (
    <EntryForm
      viewer={viewer}
      id={`step-${kind}`}
      action={`/quality/complaints/${complaintId}/steps`}
      trouble={trouble}
      seen={{ kind: 'complaint', id: complaintId, sequence }}
    >
      <HiddenEntry name="kind" value={kind} />
      {kind === 'answer' ? (
        <ChoiceEntry
          name="way"
          label={say('answer-way')}
          as="tiles"
          choices={answerWays.map((way) => ({ value: way, says: say(`answer-way-${way}`) }))}
          trouble={trouble}
          required
        />
      ) : null}
      {kind === 'look-into' ? null : (
        <div class="field" data-field="words">
          <label>
            {say(`complaint-step-words-${kind}`)}
            <textarea name="words" rows={3} maxLength={4000} required>
              {typeof trouble?.entered['words'] === 'string' ? trouble.entered['words'] : ''}
            </textarea>
          </label>
          {trouble?.fields['words'] === undefined ? null : <p class="wrong">{trouble.fields['words']}</p>}
        </div>
      )}
      <Act says={say(`complaint-step-do-${kind}`)} tone={isAsked ? 'asked' : 'plain'} />
    </EntryForm>
  );
}
