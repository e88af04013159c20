import type { VNode } from 'preact';
import type { DeliveryRow, LineRow } from '../../dispatch/delivery-rows.js';
import type { CustomerRow } from '../../plant/plant-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { planLines } from './dispatch.form.js';
import { BackTo } from './back-to.js';
import type { Goods } from './plan-lines.js';

interface PlanPageProps {
  readonly viewer: Viewer;
  readonly customers: readonly CustomerRow[];
  readonly goods: readonly Goods[];
  readonly today: string;
  readonly trouble?: FormTrouble | null;
  /** The delivery that is changed; null: a new one. */
  readonly changed?: { readonly delivery: DeliveryRow; readonly lines: readonly LineRow[] } | null;
}

/** Plans a delivery, or changes what was planned: one column, in the order of the customer's paper. */
export function planPage({ viewer, customers, goods, today, trouble = null, changed = null }: PlanPageProps): VNode {
  const delivery = changed?.delivery ?? null;
  const base = delivery === null ? '/dispatch/new' : `/dispatch/${delivery.id}/change`;
  const title = delivery === null ? say('plan-title') : say('plan-order-title', { order: delivery.orderNumber });
  return (
    <Shell title={title} viewer={viewer}>
      <BackTo href={delivery === null ? '/dispatch' : `/dispatch/${delivery.id}`} />
      <EntryForm viewer={viewer} action={base} trouble={trouble}>
        {delivery === null ? (
          <ChoiceEntry
            name="customerId"
            label={say('delivery-customer')}
            choices={customers.map(({ id, code, name }) => ({ value: id, says: name ?? code, about: code }))}
            trouble={trouble}
            required
            autofocus
          />
        ) : (
          <p>{say('plan-same-customer', { customer: delivery.customerName ?? delivery.customerCode })}</p>
        )}
        <TextEntry
          name="orderNumber"
          label={say('delivery-order')}
          value={delivery?.orderNumber}
          maxLength={40}
          trouble={trouble}
          required
          autofocus={delivery !== null}
        />
        <TextEntry
          name="plannedOn"
          label={say('delivery-planned')}
          type="date"
          value={delivery?.plannedOn ?? today}
          trouble={trouble}
          required
        />
        <TimeEntry
          name="leavesAt"
          label={say('plan-leaves')}
          hint={say('plan-leaves-hint')}
          at={delivery?.leavesAt ?? undefined}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <Lines goods={goods} lines={changed?.lines ?? []} trouble={trouble} />
        {delivery === null ? null : (
          <TextEntry name="reason" label={say('plan-why')} maxLength={200} trouble={trouble} required />
        )}
        <Act says={say(delivery === null ? 'plan-act' : 'plan-change-act')} accessKey="s" />
      </EntryForm>
    </Shell>
  );
}

interface LinesProps {
  readonly goods: readonly Goods[];
  readonly lines: readonly LineRow[];
  readonly trouble: FormTrouble | null;
}

function Lines({ goods, lines, trouble }: LinesProps): VNode {
  const choices = goods.map(({ id, name, kind, packsPerPallet }) => ({
    value: id,
    says: kind === 'grade' ? `${name} (${say('delivery-whole-bags')})` : name,
    about: packsPerPallet === null ? undefined : say('plan-per-pallet', { count: packsPerPallet }),
  }));
  return (
    <fieldset class="plan-lines">
      <legend>{say('delivery-lines')}</legend>
      {planLines.map((place) => {
        const line = lines[place - 1];
        return (
          <div class="plan-line" key={place}>
            <ChoiceEntry
              name={`goods${place}`}
              label={say('plan-goods', { place })}
              choices={choices}
              value={line?.formatId ?? line?.gradeId ?? undefined}
              trouble={trouble}
            />
            <NumberEntry
              name={`count${place}`}
              label={say('plan-count')}
              value={line === undefined ? undefined : String(line.orderedCount)}
              trouble={trouble}
            />
          </div>
        );
      })}
    </fieldset>
  );
}
