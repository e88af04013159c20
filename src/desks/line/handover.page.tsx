import type { VNode } from 'preact';
import type { LocatedShift } from '../../core/shift-calendar/locate-shift.js';
import type { Language } from '../../platform/sentences/language.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { PaperPageLink } from '../../platform/web/kit/paper-page.js';
import { PrintSheet } from '../../platform/web/kit/print-sheet.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import type { HandoverPoints } from '../../reconciliation/handover-points.js';
import type { HandoverRow } from '../../reconciliation/handovers.js';
import { ActPage } from './act.page.js';
import { SixPoints } from './six-points.js';
import type { LineNow } from './line-rows.js';
import { choicesOf } from './tip.page.js';

interface DraftProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly shift: LocatedShift;
  /** Null: no hopper feeds the line. */
  readonly points: HandoverPoints | null;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly trouble: FormTrouble | null;
}

/** The six points as they stand now, and both signatures: the outgoing lead's by this page, the incoming one's by badge. */
export function handoverDraftPage({ viewer, at, shift, points, people, trouble }: DraftProps): VNode {
  const title = say('handover-title', { line: at.line.name, shift: shift.shiftCode, day: shift.productionOn });
  return (
    <ActPage viewer={viewer} at={at} title={title} startsAtBack={at.run === null}>
      {points === null ? (
        <p class="sentence">{say('line-tips-nowhere')}</p>
      ) : (
        <SixPoints points={points} viewer={viewer} />
      )}
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/handover`} trouble={trouble} id="sign">
        {at.run === null ? null : (
          <NumberEntry
            name="loosePackCount"
            label={say('field-loose-at-handover')}
            unit={say('unit-packs')}
            required
            trouble={trouble}
            autofocus
          />
        )}
        <TextEntry name="notes" label={say('field-notes')} isLong maxLength={1000} trouble={trouble} />
        <fieldset class="signing">
          <legend>{say('handover-incoming')}</legend>
          {viewer.deviceCode === null ? (
            <div class="side-by-side">
              <TextEntry name="code" label={say('field-other-code')} maxLength={60} trouble={trouble} />
              <TextEntry name="password" label={say('field-other-password')} type="password" maxLength={200} />
            </div>
          ) : (
            <>
              <TextEntry name="badge" label={say('field-other-badge')} type="password" maxLength={60} takesScan />
              {people.length === 0 ? null : (
                <>
                  <ChoiceEntry name="person" label={say('field-other-person')} as="tiles" choices={choicesOf(people)} />
                  <TextEntry name="pin" label={say('field-pin')} type="password" maxLength={8} />
                </>
              )}
            </>
          )}
          <TextEntry name="disagreement" label={say('field-disagree')} isLong maxLength={1000} trouble={trouble} />
        </fieldset>
        <div class="acts">
          <Act says={say('handover-sign-both')} />
          <Act says={say('handover-sign-alone')} name="alone" value="true" tone="plain" />
        </div>
      </EntryForm>
    </ActPage>
  );
}

interface HandoverProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly handover: HandoverRow;
  readonly names: ReadonlyMap<string, string>;
  readonly trouble: FormTrouble | null;
  readonly paperLanguage: Language;
}

/** A handover as it was signed, to be read, printed, and confirmed where nobody has taken the line over yet. */
export function handoverPage({ viewer, at, handover, names, trouble, paperLanguage }: HandoverProps): VNode {
  const { shiftCode, productionOn, signedAt, outgoingPersonId } = handover;
  const title = say('handover-title', { line: at.line.name, shift: shiftCode, day: productionOn });
  const isOpen = handover.answeredBy === null && outgoingPersonId !== viewer.actor.personId;
  return (
    <ActPage viewer={viewer} at={at} title={title} startsAtBack>
      {trouble === null || isOpen ? null : (
        <p class="card refusal" role="alert">
          {trouble.sentence}
        </p>
      )}
      <PaperPageLink
        viewer={viewer}
        href={`/line/${at.line.id}/handovers/${handover.id}`}
        paperLanguage={paperLanguage}
      />
      <PrintSheet viewer={viewer} title={title} asAt={signedAt}>
        <SixPoints points={handover.points} viewer={viewer} />
        {handover.notes === null ? null : <p class="sentence">{say('handover-notes', { notes: handover.notes })}</p>}
        <p>{say('handover-signed-by', { name: names.get(outgoingPersonId) ?? '–' })}</p>
        <Answer viewer={viewer} handover={handover} names={names} />
      </PrintSheet>
      {!isOpen ? null : (
        <EntryForm viewer={viewer} action={`/line/${at.line.id}/handovers/${handover.id}`} trouble={trouble}>
          <TextEntry name="disagreement" label={say('field-disagree')} isLong maxLength={1000} trouble={trouble} />
          <Act says={say('line-confirm-opening')} />
        </EntryForm>
      )}
    </ActPage>
  );
}

type AnswerProps = Pick<HandoverProps, 'viewer' | 'handover' | 'names'>;

function Answer({ viewer, handover, names }: AnswerProps): VNode {
  const { answeredBy, answeredAt, how, disagreement } = handover;
  if (answeredBy === null) return <p class="notice">{say('handover-waits')}</p>;
  const facts = { name: names.get(answeredBy) ?? '–', at: answeredAt };
  return (
    <>
      <p>{sayLocally(`handover-answered-${how ?? 'together'}`, facts, viewer.timeZone)}</p>
      {disagreement === null ? null : <p class="notice">{say('handover-disagrees', { says: disagreement })}</p>}
    </>
  );
}
