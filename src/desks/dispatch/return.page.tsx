import type { VNode } from 'preact';
import type { DeliveryView } from '../../dispatch/delivery-views.js';
import type { ReturnedUnitRow } from '../../dispatch/returns.js';
import { returnCodes } from '../../dispatch/short-reasons.js';
import { mayDo } from '../../platform/actor.js';
import { printedSscc } from '../../platform/printing/printed-figures.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, NumberEntry, TextEntry, TickEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { BackTo } from './back-to.js';

interface ReturnPageProps {
  readonly viewer: Viewer;
  readonly delivery: DeliveryView;
  readonly places: readonly { readonly id: string; readonly code: string }[];
  readonly trouble?: FormTrouble | null;
  /** The trouble of a decision, with the unit that it is about. */
  readonly decisionTrouble?: FormTrouble | null;
}

/** What comes back of a delivery: taken in by the clerk, decided by quality. */
export function returnPage(props: ReturnPageProps): VNode {
  const { viewer, delivery } = props;
  const { roles } = viewer.actor;
  return (
    <Shell title={say('return-title', { order: delivery.orderNumber })} viewer={viewer}>
      <BackTo href={`/dispatch/${delivery.id}`} />
      <p class="sentence">{say('return-says')}</p>
      {delivery.returned.length === 0 ? <p class="quiet">{say('return-nothing-yet')}</p> : null}
      {delivery.returned.map((unit) => (
        <Returned key={unit.id} unit={unit} {...props} />
      ))}
      {delivery.status === 'left' && mayDo(roles, 'keep-deliveries') ? <TakeBackForm {...props} /> : null}
      {delivery.status === 'left' ? null : (
        <p class="trouble">{say('not-left-yet', { order: delivery.orderNumber })}</p>
      )}
    </Shell>
  );
}

function Returned({
  viewer,
  unit,
  decisionTrouble = null,
}: ReturnPageProps & { readonly unit: ReturnedUnitRow }): VNode {
  const trouble = decisionTrouble?.entered['unit'] === unit.id ? decisionTrouble : null;
  const facts = { count: countText(unit.unitCount), credited: countText(unit.creditedCount), place: unit.placeCode };
  return (
    <section class="card" aria-labelledby={`back-${unit.id}`}>
      <h2 id={`back-${unit.id}`}>{unit.palletId === null ? unit.name : printedSscc(unit.name)}</h2>
      <p>
        {say(`return-${unit.why}`)}
        {unit.remarks === null ? '' : `: ${unit.remarks}`} · {say('return-unit-says', facts)}
      </p>
      {unit.fate === null ? (
        <p>{say('return-undecided')}</p>
      ) : (
        <p>
          {say(`fate-${unit.fate}`)}: {unit.fateReason}
        </p>
      )}
      {unit.fate === null && mayDo(viewer.actor.roles, 'decide') ? (
        <EntryForm
          viewer={viewer}
          action={`/dispatch/${unit.deliveryId}/return/decision`}
          trouble={trouble}
          id={`d-${unit.id}`}
        >
          <HiddenEntry name="unit" value={unit.id} />
          <fieldset class="ticks">
            <legend>{say('return-decide')}</legend>
            {unit.lotId === null ? <Fate value="restock" unitId={unit.id} /> : null}
            <Fate value="destroy" unitId={unit.id} />
          </fieldset>
          <label for={`reason-${unit.id}`}>{say('return-decide-why')}</label>
          <input id={`reason-${unit.id}`} name="reason" type="text" maxLength={200} required autocomplete="off" />
          <p class="quiet">{say('return-no-rework')}</p>
          <Act says={say('return-decide-act')} />
        </EntryForm>
      ) : null}
    </section>
  );
}

function Fate({ value, unitId }: { readonly value: 'restock' | 'destroy'; readonly unitId: string }): VNode {
  return (
    <label class="tick" for={`${value}-${unitId}`}>
      <input id={`${value}-${unitId}`} type="radio" name="fate" value={value} required />
      <span>{say(`fate-${value}`)}</span>
    </label>
  );
}

function TakeBackForm({ viewer, delivery, places, trouble = null }: ReturnPageProps): VNode {
  const back = new Set(delivery.returned.flatMap((row) => row.palletId ?? row.bagId ?? []));
  const away = delivery.units.filter((unit) => !back.has(unit.id));
  const ticked = trouble?.entered['whole'] ?? [];
  const lots = [...new Set(delivery.units.flatMap((unit) => unit.lots))].join(', ');
  return (
    <>
      <h2>{say('return-take-in')}</h2>
      <EntryForm viewer={viewer} action={`/dispatch/${delivery.id}/return`} trouble={trouble}>
        <fieldset class="ticks columns" id="field-whole">
          <legend>{say('return-whole')}</legend>
          {away.map((unit) => (
            <label key={unit.id} class="tick">
              <input type="checkbox" name="whole" value={unit.id} checked={[...ticked].includes(unit.id)} />
              <span>
                {unit.kind === 'pallet' ? printedSscc(unit.name) : unit.name} · {unit.lots.join(', ')}
              </span>
            </label>
          ))}
        </fieldset>
        <TextEntry
          name="lot"
          label={say('return-loose-lot')}
          hint={say('return-loose-hint', { lots })}
          maxLength={60}
          trouble={trouble}
          isCode
        />
        <NumberEntry name="packCount" label={say('return-loose-count')} trouble={trouble} />
        <ChoiceEntry
          name="why"
          label={say('return-reason')}
          choices={returnCodes.map((code) => ({ value: code, says: say(`return-${code}`) }))}
          trouble={trouble}
          required
        />
        <TextEntry name="remarks" label={say('return-words')} maxLength={500} trouble={trouble} />
        <ChoiceEntry
          name="placeId"
          label={say('return-put')}
          hint={say('return-put-hint')}
          choices={places.map(({ id, code }) => ({ value: id, says: code }))}
          trouble={trouble}
          required
        />
        <TickEntry name="isCredited" label={say('return-credit')} hint={say('return-credit-hint')} trouble={trouble} />
        <Act says={say('return-act')} accessKey="s" />
      </EntryForm>
    </>
  );
}
