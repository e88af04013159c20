import type { VNode } from 'preact';
import type { ReceiptRow } from '../../drying/goods-receipts.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { BagTypeRow } from '../../plant/bag-types.js';
import type { NamedRow, PlaceRow } from '../../plant/plant-rows.js';

interface ReceiptsProps {
  readonly viewer: Viewer;
  readonly trouble: FormTrouble | null;
  readonly receipts: readonly ReceiptRow[];
  readonly grades: readonly NamedRow[];
  readonly bagTypes: readonly BagTypeRow[];
  readonly scales: readonly NamedRow[];
  readonly places: readonly PlaceRow[];
}

/** Bags that a supplier brought, and the last receipts. */
export function receiptsPage(props: ReceiptsProps): VNode {
  const { viewer, receipts } = props;
  const hasAll = props.grades.length > 0 && props.bagTypes.length > 0 && props.scales.length > 0;
  const mayReceive = mayDo(viewer.actor.roles, 'receive-goods');
  return (
    <Shell title={say('receipts-title')} viewer={viewer} use="tablet">
      {hasAll ? null : <p class="sentence">{say('receipts-not-ready')}</p>}
      {hasAll && mayReceive ? <ReceiptForm {...props} /> : null}
      <Table
        caption={say('receipts-last')}
        columns={[
          { head: say('receipts-number') },
          { head: say('receipts-supplier') },
          { head: say('receipts-lot') },
          { head: say('receipts-document') },
          { head: say('receipts-at') },
        ]}
        rows={receipts.map((receipt) => ({
          key: receipt.id,
          cells: [
            receipt.number,
            receipt.supplierCode,
            receipt.supplierLot,
            receipt.documentNumber,
            localText(receipt.receivedAt, viewer.timeZone),
          ],
        }))}
      />
      <p class="acts">
        <ActLink href="/dryer" says={say('dryer-back')} />
      </p>
      <p class="caution">{say('dryer-caution')}</p>
    </Shell>
  );
}

function ReceiptForm({ viewer, trouble, grades, bagTypes, scales, places }: ReceiptsProps): VNode {
  const text = (name: string, hint: string) => (
    <TextEntry name={name} label={say(`receipts-${hint}`)} required maxLength={60} trouble={trouble} />
  );
  const choice = (name: string, label: string, choices: readonly { value: string; says: string; about?: string }[]) => (
    <ChoiceEntry
      name={name}
      label={say(label)}
      required
      value={choices.length === 1 ? choices[0]?.value : undefined}
      choices={choices}
      trouble={trouble}
    />
  );
  const named = (rows: readonly NamedRow[]) =>
    rows.map(({ id, name, code }) => ({ value: id, says: name, about: code }));
  return (
    <EntryForm viewer={viewer} action="/dryer/receipts" trouble={trouble}>
      {text('supplierCode', 'supplier')}
      {text('supplierLot', 'lot')}
      {text('documentNumber', 'document')}
      {choice('gradeId', 'dryer-grade', named(grades))}
      {choice(
        'bagTypeId',
        'dryer-bag-type',
        bagTypes.map(({ id, name, usualTareGrams }) => ({
          value: id,
          says: name,
          about: say('receipts-tare', { kilograms: kilogramsText(usualTareGrams) }),
        })),
      )}
      {choice('scaleId', 'dryer-scale', named(scales))}
      <ChoiceEntry
        name="placeId"
        label={say('moves-place')}
        choices={places.map(({ id, code }) => ({ value: id, says: code }))}
        trouble={trouble}
      />
      <TextEntry
        name="weights"
        label={say('receipts-weights')}
        hint={say('receipts-weights-hint')}
        isLong
        required
        maxLength={2000}
        trouble={trouble}
      />
      <Act says={say('receipts-take')} />
    </EntryForm>
  );
}
