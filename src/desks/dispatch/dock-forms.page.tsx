import type { VNode } from 'preact';
import type { VehicleCheckRules } from '../../plant/rule-kinds.js';
import type { BlindCounts } from '../../dispatch/blind-counts.js';
import type { UnitView } from '../../dispatch/delivery-views.js';
import type { DeliveryRow, VehicleCheckRow } from '../../dispatch/delivery-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { BackTo } from './back-to.js';
import { lastDigits } from './unit-text.js';

/** A form of a delivery, at the clerk's desk or in the loader's hand. */
interface DockFormProps {
  readonly viewer: Viewer;
  readonly delivery: DeliveryRow;
  /** `/dispatch/…` or `/dock/…`: where the form sends to and goes back to. */
  readonly base: string;
  readonly trouble: FormTrouble | null;
}

export function useOf(base: string): 'handheld' | 'desk' {
  return base.startsWith('/dock') ? 'handheld' : 'desk';
}

interface CheckPageProps extends DockFormProps {
  readonly points: VehicleCheckRules['checkPoints'];
  readonly last: VehicleCheckRow | null;
}

/** The vehicle is looked at before anything goes on: each point is ticked that is fine. */
export function vehicleCheckPage({ viewer, delivery, base, trouble, points, last }: CheckPageProps): VNode {
  const before = trouble?.entered['fine'] ?? [];
  const failed = last === null || last.passed ? [] : last.answers.filter(({ isFine }) => !isFine);
  const texts = new Map(points.map(({ code, text }) => [code, text]));
  return (
    <Shell title={say('vehicle-title', { order: delivery.orderNumber })} viewer={viewer} use={useOf(base)}>
      <BackTo href={base} />
      {failed.length === 0 ? null : (
        <p class="trouble">
          {say('vehicle-failed-before', { points: failed.map(({ point }) => texts.get(point) ?? point).join('; ') })}
        </p>
      )}
      <p class="caution">{say('vehicle-caution')}</p>
      <EntryForm viewer={viewer} action={`${base}/check`} trouble={trouble}>
        <TextEntry
          name="registration"
          label={say('vehicle-registration')}
          value={last?.registration}
          maxLength={20}
          trouble={trouble}
          required
          autofocus
        />
        <TextEntry
          name="haulierCode"
          label={say('vehicle-haulier')}
          value={last?.haulierCode}
          maxLength={30}
          trouble={trouble}
          required
        />
        <fieldset class="ticks" id="field-fine">
          <legend>{say('vehicle-points')}</legend>
          {points.map(({ code, text }) => (
            <label key={code} class="tick">
              <input type="checkbox" name="fine" value={code} checked={[...before].includes(code)} />
              <span>{text}</span>
            </label>
          ))}
        </fieldset>
        <p>{say('vehicle-what-then')}</p>
        <Act says={say('vehicle-act')} accessKey="s" />
      </EntryForm>
    </Shell>
  );
}

interface CountPageProps extends DockFormProps {
  readonly counts: BlindCounts;
}

/** The count by walking round. What was scanned stands nowhere on this page. */
export function countPage({ viewer, delivery, base, trouble, counts }: CountPageProps): VNode {
  return (
    <Shell title={say('walk-title', { order: delivery.orderNumber })} viewer={viewer} use={useOf(base)}>
      <BackTo href={base} />
      <p class="sentence">{say('walk-says')}</p>
      {counts.last === null || counts.agrees ? null : (
        <p class="trouble" role="status">
          {say(counts.difference === null ? 'walk-once-more' : 'walk-compare', {
            counted: counts.last.unitCount,
            difference: Math.abs(counts.difference ?? 0),
          })}
        </p>
      )}
      <p class="caution">{say('walk-caution')}</p>
      <EntryForm viewer={viewer} action={`${base}/count`} trouble={trouble}>
        <NumberEntry name="unitCount" label={say('walk-units')} trouble={trouble} required autofocus />
        <Act says={say('walk-act')} accessKey="s" />
      </EntryForm>
    </Shell>
  );
}

interface UnloadPageProps extends DockFormProps {
  readonly unit: Pick<UnitView, 'id' | 'name'>;
  readonly places: readonly { readonly id: string; readonly code: string }[];
  /** Where it stood before it was loaded. */
  readonly placeId: string | null;
}

/** A unit comes off again: why, and where it is put. */
export function unloadPage({ viewer, delivery, base, trouble, unit, places, placeId }: UnloadPageProps): VNode {
  return (
    <Shell title={say('unload-title', { order: delivery.orderNumber })} viewer={viewer} use={useOf(base)}>
      <BackTo href={base} />
      <p class="sentence">
        {say('unload-says')} <span class="digits">{lastDigits(unit.name)}</span>
      </p>
      <EntryForm viewer={viewer} action={`${base}/unload`} trouble={trouble}>
        <HiddenEntry name="unit" value={unit.id} />
        <TextEntry name="reason" label={say('unload-why')} maxLength={200} trouble={trouble} required autofocus />
        <ChoiceEntry
          name="placeId"
          label={say('unload-place')}
          choices={places.map(({ id, code }) => ({ value: id, says: code }))}
          value={placeId ?? undefined}
          trouble={trouble}
        />
        <Act says={say('unload-act')} accessKey="s" />
      </EntryForm>
    </Shell>
  );
}
