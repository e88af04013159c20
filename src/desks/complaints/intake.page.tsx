import type { VNode } from 'preact';
import { complaintCategories, complaintSeverities } from '../../complaints/complaint-words.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry, TickEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { findingText, fitsText } from '../finding-text.js';
import { choiceKey, type Finding } from '../finding.js';

interface IntakeProps {
  readonly viewer: Viewer;
  readonly code: string;
  /** What the code may mean, where that was asked. */
  readonly findings: readonly Finding[];
  readonly trouble: FormTrouble | null;
}

/** A complaint as it comes, top to bottom in the order in which one asks on the telephone. */
export function intakePage({ viewer, code, findings, trouble }: IntakeProps): VNode {
  return (
    <Shell title={say('intake-title')} viewer={viewer}>
      <EntryForm viewer={viewer} id="intake" action="/quality/complaints/new" trouble={trouble}>
        <section class="card">
          <TextEntry
            name="codeAsRead"
            label={say('intake-code')}
            hint={say('intake-code-hint')}
            value={code}
            maxLength={200}
            trouble={trouble}
            isCode
            autofocus
          />
          {findings.length === 0 ? null : <Meant findings={findings} trouble={trouble} />}
          {trouble?.code === 'complaint-code-unknown' || trouble?.code === 'complaint-code-which' ? (
            <TickEntry name="isUnlinked" label={say('intake-unlinked')} trouble={trouble} />
          ) : null}
          <Class trouble={trouble} />
          <TextEntry
            name="words"
            label={say('intake-words')}
            hint={say('intake-words-hint')}
            maxLength={2000}
            trouble={trouble}
            isLong
            required
          />
        </section>
        <section class="card">
          <TextEntry name="boughtWhere" label={say('intake-where')} maxLength={200} trouble={trouble} />
          <TextEntry name="boughtOn" label={say('intake-on')} type="date" trouble={trouble} />
          <NumberEntry name="packCount" label={say('intake-packs')} trouble={trouble} />
          <TextEntry
            name="contactName"
            label={say('intake-name')}
            hint={say('intake-name-hint')}
            maxLength={120}
            trouble={trouble}
          />
          <TextEntry name="contactReach" label={say('intake-reach')} maxLength={200} trouble={trouble} />
          <TimeEntry
            name="receivedAt"
            label={say('intake-received')}
            hint={say('intake-received-hint')}
            timeZone={viewer.timeZone}
            trouble={trouble}
          />
          <TextEntry name="reason" label={say('intake-reason')} maxLength={500} trouble={trouble} />
        </section>
        <Act says={say('intake-act')} />
      </EntryForm>
    </Shell>
  );
}

/** What it is about and how grave, in one look. */
export function Class({ trouble, category, severity }: ClassProps): VNode {
  return (
    <>
      <ChoiceEntry
        name="category"
        label={say('intake-category')}
        as="tiles"
        choices={complaintCategories.map((value) => ({ value, says: say(`complaint-about-${value}`) }))}
        value={category}
        trouble={trouble}
        required
      />
      <ChoiceEntry
        name="severity"
        label={say('intake-severity')}
        as="tiles"
        choices={complaintSeverities.map((value) => ({
          value,
          says: say(`severity-${value}`),
          about: say(`severity-${value}-about`),
        }))}
        value={severity}
        trouble={trouble}
        required
      />
    </>
  );
}

interface ClassProps {
  readonly trouble: FormTrouble | null;
  readonly category?: string | undefined;
  readonly severity?: string | undefined;
}

/** Which of several things is meant, each with why it fits. */
export function Meant({ findings, trouble }: Pick<IntakeProps, 'findings' | 'trouble'>): VNode {
  return (
    <ChoiceEntry
      name="meant"
      label={say('intake-meant')}
      as="tiles"
      choices={findings.map((finding) => ({
        value: choiceKey(finding),
        says: [findingText(finding), finding.about].filter((text) => text !== '').join(' · '),
        about: fitsText(finding.fits),
      }))}
      trouble={trouble}
    />
  );
}
