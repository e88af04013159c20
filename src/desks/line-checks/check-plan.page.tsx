import type { VNode } from 'preact';
import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import { checkEvents, testMaterials, type CheckKind } from '../../line-checks/check-words.js';
import type { NamedRow } from '../../plant/plant-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, NumberEntry, TextEntry, TickEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { piecePlaces } from './check-page.form.js';

interface NewPlanProps {
  readonly viewer: Viewer;
  readonly line: NamedRow;
  readonly kind: CheckKind;
  readonly formats: readonly NamedRow[];
  readonly trouble: FormTrouble | null;
}

/** A new plan of a kind at a line. */
export function newPlanPage({ viewer, line, kind, formats, trouble }: NewPlanProps): VNode {
  const title = say('plan-new-title', { kind: say(`check-kind-${kind}`), line: line.name });
  return (
    <Shell title={title} viewer={viewer}>
      <p class="caution">{say(`check-caution-${kind}`)}</p>
      <EntryForm viewer={viewer} action={`/set-up/checks/new?line=${line.id}&kind=${kind}`} trouble={trouble}>
        <HiddenEntry name="lineId" value={line.id} />
        <HiddenEntry name="kind" value={kind} />
        <ChoiceEntry
          name="formatId"
          label={say('plan-format')}
          hint={say('plan-format-hint')}
          trouble={trouble}
          choices={formats.map(({ id, name }) => ({ value: id, says: name }))}
        />
        <PlanFields kind={kind} plan={null} trouble={trouble} />
        <div class="acts">
          <Act says={say('plan-record')} />
        </div>
      </EntryForm>
    </Shell>
  );
}

interface ChangePlanProps {
  readonly viewer: Viewer;
  readonly plan: CheckPlanRow;
  readonly trouble: FormTrouble | null;
}

/** A plan as it stands: a new version from now on, or its end. */
export function changePlanPage({ viewer, plan, trouble }: ChangePlanProps): VNode {
  const { kind, planId } = plan;
  const title = say('plan-change-title', { station: plan.station, line: plan.lineName });
  const isOfEnd = trouble !== null && trouble.entered['station'] === undefined;
  return (
    <Shell title={title} viewer={viewer}>
      <p class="quiet">{say('plan-change-says', { kind: say(`check-kind-${kind}`) })}</p>
      <EntryForm
        viewer={viewer}
        action={`/set-up/checks/${planId}`}
        trouble={isOfEnd ? null : trouble}
        id="change-plan"
      >
        <PlanFields kind={kind} plan={plan} trouble={isOfEnd ? null : trouble} />
        <div class="acts">
          <Act says={say('plan-record')} />
        </div>
      </EntryForm>
      <details class="card" open={isOfEnd}>
        <summary>{say('plan-end')}</summary>
        <EntryForm
          viewer={viewer}
          action={`/set-up/checks/${planId}/end`}
          trouble={isOfEnd ? trouble : null}
          id="end-plan"
        >
          <TextEntry name="reason" label={say('plan-end-why')} required trouble={isOfEnd ? trouble : null} />
          <div class="acts">
            <Act says={say('plan-end')} tone="careful" />
          </div>
        </EntryForm>
      </details>
    </Shell>
  );
}

/** What these are checked with has words of its own. */
const withOwnPieces: ReadonlySet<CheckKind> = new Set(['metal-detection', 'weigher', 'rejecter']);

interface FieldsProps {
  readonly kind: CheckKind;
  readonly plan: CheckPlanRow | null;
  readonly trouble: FormTrouble | null;
}

function PlanFields({ kind, plan, trouble }: FieldsProps): VNode {
  const number = (value: number | null | undefined): string | undefined => (value == null ? undefined : String(value));
  return (
    <>
      <TextEntry
        name="station"
        label={say('plan-station')}
        hint={say('plan-station-hint')}
        required
        value={plan?.station}
        trouble={trouble}
        maxLength={60}
      />
      <NumberEntry
        name="everyMinutes"
        label={say('plan-every')}
        hint={say('plan-every-hint')}
        unit="min"
        value={number(plan?.everyMinutes)}
        trouble={trouble}
      />
      <NumberEntry
        name="graceMinutes"
        label={say('plan-grace')}
        hint={say('plan-grace-hint')}
        unit="min"
        required
        value={number(plan?.graceMinutes)}
        trouble={trouble}
      />
      <fieldset class="tiles" data-field="events">
        <legend>{say('plan-events')}</legend>
        <div>
          {checkEvents.map((event) => (
            <label key={event} class="tile">
              <input type="checkbox" name="events" value={event} checked={hasEvent(plan, trouble, event)} />
              <span>{say(`check-event-${event}`)}</span>
            </label>
          ))}
        </div>
      </fieldset>
      <TickEntry
        name="needsSecondPerson"
        label={say('plan-second-person')}
        checked={plan?.needsSecondPerson}
        trouble={trouble}
      />
      <h2>{say('plan-pieces')}</h2>
      <p>{say(`plan-pieces-${withOwnPieces.has(kind) ? kind : 'points'}`)}</p>
      {piecePlaces.map((place) => (
        <PieceFields key={place} kind={kind} plan={plan} place={place} trouble={trouble} />
      ))}
    </>
  );
}

function hasEvent(
  plan: CheckPlanRow | null,
  trouble: FormTrouble | null,
  event: (typeof checkEvents)[number],
): boolean {
  if (trouble === null) return plan?.events.includes(event) ?? false;
  const entered = trouble.entered['events'] ?? [];
  return typeof entered === 'string' ? entered === event : entered.includes(event);
}

function PieceFields({ kind, plan, place, trouble }: FieldsProps & { readonly place: number }): VNode {
  const piece = plan?.testPieces[place];
  const thousandth = (value: number | null | undefined): string | undefined =>
    value == null ? undefined : String(value / 1000);
  const number = place + 1;
  return (
    <div class="piece-fields">
      <TextEntry
        name={`says${place}`}
        label={say('piece-name', { number })}
        value={piece?.says}
        trouble={trouble}
        maxLength={80}
      />
      {kind !== 'metal-detection' ? null : (
        <>
          <ChoiceEntry
            name={`material${place}`}
            label={say('piece-material', { number })}
            value={piece?.material ?? undefined}
            trouble={trouble}
            choices={testMaterials.map((material) => ({ value: material, says: say(`test-material-${material}`) }))}
          />
          <NumberEntry
            name={`sphere${place}`}
            label={say('piece-sphere-label', { number })}
            unit="mm"
            value={thousandth(piece?.sphereMicrometres)}
            trouble={trouble}
          />
        </>
      )}
      {kind !== 'weigher' ? null : (
        <>
          <NumberEntry
            name={`known${place}`}
            label={say('piece-known-label', { number })}
            unit="g"
            value={thousandth(piece?.knownMilligrams)}
            trouble={trouble}
          />
          <NumberEntry
            name={`allowed${place}`}
            label={say('piece-allowed-label', { number })}
            unit="g"
            value={thousandth(piece?.allowedMilligrams)}
            trouble={trouble}
          />
        </>
      )}
    </div>
  );
}
