import type { VNode } from 'preact';
import type { DeliveryRow } from '../../dispatch/delivery-rows.js';
import { shortCodes } from '../../dispatch/short-reasons.js';
import type { Language } from '../../platform/sentences/language.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, TextEntry, TickEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Live } from '../../platform/web/kit/live.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { BackTo } from './back-to.js';
import { loadingActions, Need, Unfit } from './loading.page.js';
import type { LoadingView } from './loading-view.js';

interface ClosePageProps {
  readonly viewer: Viewer;
  readonly loading: LoadingView;
  readonly trouble: FormTrouble | null;
  /** All was entered and could be printed now. */
  readonly isLookedOver: boolean;
  /** That of the note, before it is printed. */
  readonly paperLanguage: Language;
}

/**
 * The last page before the papers. Enter only looks over what was entered; printing is a button of its own. A hold on
 * what is on locks it while the page is open.
 */
export function closePage({ viewer, loading, trouble, isLookedOver, paperLanguage }: ClosePageProps): VNode {
  const { view, step } = loading;
  const base = `/dispatch/${view.id}`;
  const isShort = loading.lines.some((line) => line.leftCount > 0);
  return (
    <Shell title={say('closing-title', { order: view.orderNumber })} viewer={viewer}>
      <BackTo href={base} />
      <Live id="closing-need" about={loadingActions}>
        <Unfit loading={loading} base={base} />
        <Need loading={loading} />
        <p class="sentence">
          {say('closing-counted', { count: countText(view.loadedCount) })}
          {isShort ? ` ${say('closing-short')}` : ''}
        </p>
      </Live>
      <EntryForm viewer={viewer} action={`${base}/close`} trouble={isLookedOver ? null : trouble}>
        {isLookedOver ? (
          <p class="said-before" role="status">
            {say('closing-looked-over')}
          </p>
        ) : null}
        <TextEntry name="seal" label={say('delivery-seal')} maxLength={40} trouble={trouble} required autofocus />
        {isShort ? <Short trouble={trouble} /> : null}
        <TextEntry name="remarks" label={say('closing-remarks')} maxLength={500} trouble={trouble} isLong />
        <NoteLanguage customerId={loading.view.customerId} paperLanguage={paperLanguage} />
        <div class="acts">
          <Act says={say('closing-look')} name="step" value="look" tone="plain" />
          <Live id="closing-act" about={loadingActions}>
            {step === 'close' ? (
              <Act says={say('closing-act')} name="step" value="print" accessKey="p" />
            ) : (
              <button type="button" class="act plain" disabled>
                {say('closing-locked')}
              </button>
            )}
          </Live>
        </div>
      </EntryForm>
    </Shell>
  );
}

/** In which language the note will be, and where that is said otherwise. */
function NoteLanguage({
  customerId,
  paperLanguage,
}: {
  readonly customerId: string;
  readonly paperLanguage: Language;
}): VNode {
  return (
    <p>
      {say('note-will-be-in', { language: paperLanguage })}{' '}
      <a href={`/customers/${customerId}`}>{say('note-language-change')}</a>
    </p>
  );
}

function Short({ trouble }: { readonly trouble: FormTrouble | null }): VNode {
  return (
    <>
      <ChoiceEntry
        name="shortCode"
        label={say('closing-short-why')}
        choices={shortCodes.map((code) => ({ value: code, says: say(`short-${code}`) }))}
        trouble={trouble}
      />
      <TextEntry name="shortReason" label={say('closing-short-words')} maxLength={200} trouble={trouble} />
    </>
  );
}

interface GatePageProps {
  readonly viewer: Viewer;
  readonly loading: LoadingView;
  readonly trouble: FormTrouble | null;
}

/** The vehicle leaves: the last look at what is on it. The list for the gate names what must not go. */
export function leavePage({ viewer, loading, trouble }: GatePageProps): VNode {
  const { view } = loading;
  const base = `/dispatch/${view.id}`;
  return (
    <Shell title={say('gate-title', { order: view.orderNumber })} viewer={viewer}>
      <BackTo href={base} />
      <Live id="gate" about={loadingActions}>
        <Unfit loading={loading} base={base} />
        {loading.unfit.length === 0 ? <p class="sentence">{say('gate-fine', { note: view.noteNumber })}</p> : null}
      </Live>
      <EntryForm viewer={viewer} action={`${base}/leave`} trouble={trouble}>
        <TimeEntry
          name="leftAt"
          label={say('gate-when')}
          hint={say('gate-when-hint')}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <TextEntry name="reason" label={say('gate-late')} maxLength={200} trouble={trouble} />
        <TickEntry name="isGone" label={say('gate-gone')} hint={say('gate-gone-hint')} trouble={trouble} />
        <Act says={say('gate-act')} accessKey="g" />
      </EntryForm>
      <p class="caution">{say('caution-vehicles')}</p>
    </Shell>
  );
}

interface ReasonPageProps {
  readonly viewer: Viewer;
  readonly delivery: DeliveryRow;
  readonly trouble: FormTrouble | null;
}

interface VoidPageProps extends ReasonPageProps {
  /** That of the note which takes its place. */
  readonly paperLanguage: Language;
}

/** The note is made void: the vehicle did not leave so, or the paper was wrong. */
export function voidPage({ viewer, delivery, trouble, paperLanguage }: VoidPageProps): VNode {
  const base = `/dispatch/${delivery.id}`;
  return (
    <Shell title={say('note-void-title', { note: delivery.noteNumber })} viewer={viewer}>
      <BackTo href={base} />
      <p class="sentence">{say('note-void-says')}</p>
      <EntryForm viewer={viewer} action={`${base}/void`} trouble={trouble}>
        <HiddenEntry name="note" value={delivery.noteNumber ?? ''} />
        <ChoiceEntry
          name="correction"
          as="tiles"
          label={say('note-void-which')}
          choices={[
            {
              value: 'did-not-occur',
              says: say('note-void-did-not-occur'),
              about: say('note-void-did-not-occur-about'),
            },
            {
              value: 'incorrect-data',
              says: say('note-void-incorrect-data'),
              about: say('note-void-incorrect-data-about'),
            },
          ]}
          trouble={trouble}
          required
        />
        <TextEntry name="reason" label={say('note-void-why')} maxLength={200} trouble={trouble} required />
        <TextEntry
          name="seal"
          label={say('note-void-seal')}
          hint={say('note-void-seal-hint')}
          maxLength={40}
          trouble={trouble}
        />
        <NoteLanguage customerId={delivery.customerId} paperLanguage={paperLanguage} />
        <Act says={say('note-void-act')} tone="careful" />
      </EntryForm>
    </Shell>
  );
}

export function cancelPage({ viewer, delivery, trouble }: ReasonPageProps): VNode {
  const base = `/dispatch/${delivery.id}`;
  return (
    <Shell title={say('plan-cancel-title', { order: delivery.orderNumber })} viewer={viewer}>
      <BackTo href={base} />
      <EntryForm viewer={viewer} action={`${base}/cancel`} trouble={trouble}>
        <TextEntry name="reason" label={say('plan-cancel-why')} maxLength={200} trouble={trouble} required autofocus />
        <Act says={say('plan-cancel-act')} tone="careful" />
      </EntryForm>
    </Shell>
  );
}
