import type { VNode } from 'preact';
import { stopReasons } from '../../packing/line-stop.form.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { ChoiceEntry, NumberEntry, TextEntry, TickEntry } from '../../platform/web/kit/entries.js';
import { RemovalEntries, wordsOf } from '../line/removal-entries.js';
import { choicesOf } from '../line/tip.page.js';
import { CheckFields } from './check-fields.js';
import type { RowFormProps } from './row-form-props.js';

/** What a row of each kind says beside its time and its writer. */
export function RowFields(props: RowFormProps): VNode | null {
  switch (props.form.facts.kind) {
    case 'tips':
      return <TipFields {...props} />;
    case 'pallets':
      return <PalletFields {...props} />;
    case 'stops':
      return <StopFields {...props} />;
    case 'counts':
      return <CountFields {...props} />;
    case 'checks':
      return <CheckFields {...props} />;
    case 'removals':
      return <RemovalEntries scales={props.scales} trouble={props.trouble} />;
  }
}

function TipFields({ row, scales, trouble }: RowFormProps): VNode {
  const isBegun = row.state === 'begun';
  return (
    <>
      {isBegun ? null : (
        <TextEntry name="bag" label={say('field-bag')} isCode required maxLength={40} trouble={trouble} />
      )}
      <TextEntry
        name="offTime"
        label={say('written-off-time')}
        hint={say(isBegun ? 'written-time-hint' : 'written-off-time-hint')}
        isCode
        required={isBegun}
        maxLength={5}
        trouble={trouble}
      />
      <p class="quiet">{say('written-part-says')}</p>
      <div class="side-by-side">
        <NumberEntry name="grossGrams" label={say('field-gross')} unit="kg" trouble={trouble} />
        <NumberEntry name="tareGrams" label={say('field-tare')} unit="kg" trouble={trouble} />
      </div>
      <Scale scales={scales} trouble={trouble} />
    </>
  );
}

function Scale({ scales, trouble }: Pick<RowFormProps, 'scales' | 'trouble'>): VNode {
  return (
    <ChoiceEntry
      name="scaleId"
      label={say('field-scale')}
      hint={say('field-scale-hint')}
      choices={choicesOf(scales)}
      trouble={trouble}
    />
  );
}

function PalletFields({ row, trouble }: RowFormProps): VNode {
  return (
    <>
      <TextEntry
        name="sscc"
        label={say('written-sscc')}
        hint={say('written-sscc-hint')}
        value={row.sscc ?? undefined}
        isCode
        required
        maxLength={24}
        takesScan
        trouble={trouble}
      />
      <Packs label={say('field-packs-on-pallet')} isRequired trouble={trouble} />
      <TickEntry name="label" label={say('written-label')} hint={say('written-label-hint')} trouble={trouble} />
    </>
  );
}

function Packs({
  label,
  isRequired,
  trouble,
}: {
  readonly label: string;
  readonly isRequired?: boolean;
  readonly trouble: FormTrouble | null;
}): VNode {
  return (
    <NumberEntry name="packCount" label={label} unit={say('unit-packs')} required={isRequired} trouble={trouble} />
  );
}

function StopFields({ row, trouble }: RowFormProps): VNode {
  const isBegun = row.state === 'begun';
  return (
    <>
      <TextEntry
        name="againTime"
        label={say('written-again-time')}
        hint={say(isBegun ? 'written-time-hint' : 'written-again-time-hint')}
        isCode
        required={isBegun}
        maxLength={5}
        trouble={trouble}
      />
      {isBegun ? null : (
        <>
          <ChoiceEntry
            name="stopReason"
            label={say('stop-why')}
            choices={wordsOf('stop-reason', stopReasons)}
            required
            trouble={trouble}
          />
          <Packs label={say('field-counter')} trouble={trouble} />
        </>
      )}
    </>
  );
}

function CountFields({ trouble }: RowFormProps): VNode {
  return (
    <div class="side-by-side">
      <Packs label={say('field-counter')} isRequired trouble={trouble} />
      <NumberEntry name="loosePackCount" label={say('field-loose')} unit={say('unit-packs')} trouble={trouble} />
    </div>
  );
}
