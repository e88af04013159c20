import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { ComplaintFileProps } from './complaint-file-props.js';
import { Class, Meant } from './intake.page.js';
import { WithdrawForm } from './withdraw-box.js';

/** What it is about, found out later or found to be another thing. */
export function LinkBox({ viewer, file, findings, trouble, isOpen }: ComplaintFileProps & { isOpen: boolean }): VNode {
  const { complaint, sequence } = file;
  const form = trouble?.of === 'link' ? trouble.form : null;
  return (
    <details class="card" open={isOpen || form !== null}>
      <summary>{say(isOpen ? 'complaint-link' : 'complaint-link-anew')}</summary>
      <EntryForm
        viewer={viewer}
        id="link-form"
        action={`/quality/complaints/${complaint.id}/link`}
        trouble={form}
        seen={{ kind: 'complaint', id: complaint.id, sequence }}
      >
        <TextEntry
          name="code"
          label={say('complaint-link-code')}
          value={complaint.codeAsRead ?? ''}
          maxLength={200}
          trouble={form}
          isCode
          required
        />
        {findings.length === 0 ? null : <Meant findings={findings} trouble={form} />}
        <Act says={say('complaint-link-act')} tone={isOpen ? 'asked' : 'plain'} />
      </EntryForm>
    </details>
  );
}

/** Who complained, for whoever answers; it goes when it is not needed any more. */
export function ContactBox({ viewer, file }: ComplaintFileProps): VNode | null {
  const { complaint, contact } = file;
  if (contact === null) return null;
  return (
    <section class="card" aria-labelledby="contact">
      <h2 id="contact">{say('complaint-contact')}</h2>
      <p>{[contact.name, contact.reach].filter((text) => text !== null).join(', ')}</p>
      <p class="quiet">{say('complaint-contact-says')}</p>
      <EntryForm viewer={viewer} id="contact-form" action={`/quality/complaints/${complaint.id}/contact-removal`}>
        <Act says={say('complaint-contact-remove')} tone="careful" />
      </EntryForm>
    </section>
  );
}

/** What is seldom needed: another category or severity, and withdrawing the whole. */
export function RareBoxes({ viewer, file, trouble }: ComplaintFileProps): VNode {
  const { complaint, sequence } = file;
  const { category, severity } = complaint;
  const form = trouble?.of === 'class' ? trouble.form : null;
  return (
    <section class="card">
      <details open={form !== null}>
        <summary>{say('complaint-class')}</summary>
        <EntryForm
          viewer={viewer}
          id="class-form"
          action={`/quality/complaints/${complaint.id}/class`}
          trouble={form}
          seen={{ kind: 'complaint', id: complaint.id, sequence }}
        >
          <Class trouble={form} category={category} severity={severity} />
          <TextEntry name="reason" label={say('complaint-class-reason')} maxLength={1000} trouble={form} required />
          <Act says={say('complaint-class')} tone="plain" />
        </EntryForm>
      </details>
      <WithdrawForm
        viewer={viewer}
        id="withdraw-complaint"
        summary={say('complaint-withdraw')}
        action={`/quality/complaints/${complaint.id}/withdrawal`}
        trouble={trouble?.of === 'withdrawal' ? trouble.form : null}
      />
    </section>
  );
}
