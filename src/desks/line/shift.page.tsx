import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { HiddenEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Live } from '../../platform/web/kit/live.js';
import { clockText, localText, sayLocally } from '../../platform/web/local-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { LineBand } from './line-band.js';
import { ShiftPictures } from './shift-pictures.js';
import type { ShiftView } from './shift-view.js';

interface ShiftProps {
  readonly viewer: Viewer;
  readonly view: ShiftView;
  readonly trouble?: FormTrouble | null | undefined;
}

/** What changes what the shift page shows, by the journal's words. */
const followed = [
  'tip-bag',
  'end-tip',
  'count-packs',
  'build-pallet',
  'check-pallet-label',
  'stop-line',
  'start-line-again',
];

/** The shift of a line: what is in the hopper, may I tip this, does it add up, what is left open? */
export function shiftPage({ viewer, view, trouble }: ShiftProps): VNode {
  const { line } = view;
  // Who only reads is shown no act: it would be refused.
  const mayRun = mayDo(viewer.actor.roles, 'run-line');
  return (
    <Shell title={say('line-title', { line: line.name })} viewer={viewer} use="tablet" hasUnseenTitle>
      <div class="line-desk">
        <Head viewer={viewer} view={view} />
        {mayRun ? <Opening viewer={viewer} view={view} /> : null}
        <LineBand viewer={viewer} view={view} trouble={trouble ?? null} />
        {mayRun ? <Buttons viewer={viewer} view={view} /> : null}
        <Live
          id="line-now"
          about={[
            ...followed,
            'check-line',
            'weigh-hand-sample',
            'look-at-weighing',
            'remove-sugar',
            'see-level',
            'run-down',
            'prove-empty',
            'place-hold',
          ]}
        >
          <ShiftPictures viewer={viewer} view={view} />
        </Live>
        <OtherActs view={view} mayRun={mayRun} />
      </div>
    </Shell>
  );
}

function Head({ viewer, view }: { readonly viewer: Viewer; readonly view: ShiftView }): VNode {
  const { line, run, code, shift, now } = view;
  return (
    <div class="line-head">
      <div>
        <p class="running">
          <strong>{line.name}</strong>
          {run === null ? ` · ${say('line-no-run')}` : ` · ${run.formatName} · ${run.number}`}
          {run === null ? null : (
            <>
              {' · '}
              {code === null ? (
                <strong class="asked-for">{say('line-no-code')}</strong>
              ) : (
                <span class="code big">{code}</span>
              )}
            </>
          )}
        </p>
        <p class="shift">
          {say('line-shift', { shift: shift.shiftCode, until: clockText(shift.endsAt, viewer.timeZone) })}
          {' · '}
          {localText(now, viewer.timeZone)}
        </p>
      </div>
      <ActLink href={`/line/${line.id}/person`} says={`${viewer.name} · ${say('line-change-person')}`} />
    </div>
  );
}

/** A line that was handed over by one alone waits for who opens it; a line without a run for its start. */
function Opening({ viewer, view }: { readonly viewer: Viewer; readonly view: ShiftView }): VNode | null {
  const { opening, changeover, line } = view;
  if (opening !== null && !opening.isOwn) {
    return (
      <section class="notice">
        <p>{sayLocally('line-opening-waits', { by: opening.by, at: opening.at }, viewer.timeZone)}</p>
        <ActLink href={`/line/${line.id}/handovers/${opening.id}`} says={say('line-confirm-opening')} tone="asked" />
      </section>
    );
  }
  if (changeover?.next == null) return null;
  return (
    <section class="notice">
      <p>{say('line-changeover-open', { format: changeover.toFormatName, rung: say(`rung-${changeover.next}`) })}</p>
      <ActLink href={`/line/${line.id}/changeover`} says={say('line-go-on')} tone="asked" />
    </section>
  );
}

/** What a lead does many times a shift, each in one touch. */
function Buttons({ viewer, view }: { readonly viewer: Viewer; readonly view: ShiftView }): VNode {
  const { line, run, stops, points } = view;
  const at = `/line/${line.id}`;
  const stop = stops.find(({ runId, startedAgainAt }) => startedAgainAt === null && runId === run?.id);
  return (
    <div class="acts big-acts">
      {run === null ? (
        <ActLink href={`${at}/run`} says={say('line-start-run')} tone="asked" />
      ) : (
        <>
          <EntryForm viewer={viewer} action={`${at}/pallets`} queue="pallet" class="one-touch">
            <HiddenEntry name="run" value={run.number} />
            <Act says={say('line-pallet-full')} tone="plain" command="pallet-full" />
          </EntryForm>
          {stop === undefined ? (
            <EntryForm viewer={viewer} action={`${at}/stops`} queue="stop" class="one-touch">
              <HiddenEntry name="run" value={run.number} />
              <HiddenEntry name="stopReason" value="not-said" />
              <Act says={say('line-stop-now')} tone="plain" command="stop" />
            </EntryForm>
          ) : (
            <ActLink href={`${at}/stops/${stop.id}`} says={say('line-stands')} tone="asked" command="runs-again" />
          )}
        </>
      )}
      <ActLink href={`${at}/removals`} says={say('line-removals')} />
      <ActLink href={`${at}/level`} says={say('line-level')} command="empty" />
      <ActLink href={`${at}/undo`} says={say('line-undo')} command="undo-last" />
      <ActLink
        href={`${at}/handover`}
        says={say('line-hand-over', { count: countText(points.length) })}
        command="hand-over"
      />
    </div>
  );
}

/** What a lead does once or twice a shift. */
function OtherActs({ view, mayRun }: { readonly view: ShiftView; readonly mayRun: boolean }): VNode {
  const at = `/line/${view.line.id}`;
  const ways = [
    ...(view.run === null || !mayRun ? [] : ['count', 'film', 'code', 'run']),
    ...(mayRun
      ? ['checks', 'hand-samples', 'late', 'unread', 'bin', 'swap', 'changeover', 'account']
      : ['checks', 'account']),
  ];
  return (
    <nav class="other-acts" aria-label={say('line-other-acts')}>
      {ways.map((way) => (
        <a key={way} class="act plain" href={`${at}/${way}`}>
          {say(`line-to-${way}`)}
        </a>
      ))}
      <a class="act plain" href={`/lines/${view.line.id}/settings`}>
        {say('line-to-settings')}
      </a>
      {view.hopper === null ? null : (
        <a class="act plain" href={`/hoppers/${view.hopper.id}`}>
          {say('line-to-hopper')}
        </a>
      )}
      <a class="act plain" href={`/paper-forms?line=${view.line.id}`}>
        {say('paper-forms-title')}
      </a>
    </nav>
  );
}
