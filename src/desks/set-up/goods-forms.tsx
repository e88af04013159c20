import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { ChoiceEntry, HiddenEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { Table } from '../../platform/web/kit/table.js';
import { nextCode } from './read-steps.js';
import { limitRows } from './set-up.form.js';
import { Amount, StepForm, Text, type StepFormProps } from './step-kit.js';

interface BagTypeFormProps extends StepFormProps {
  /** The type that is being changed. */
  readonly changing: string | null;
}

export function BagTypeForm({ changing, ...props }: BagTypeFormProps): VNode {
  const { bagTypes } = props.state;
  const old = bagTypes.find(({ id }) => id === changing);
  const kilograms = (grams: number | undefined) => (grams === undefined ? undefined : kilogramsText(grams));
  const code = nextCode(
    'BAG',
    bagTypes.map((type) => type.code),
  );
  return (
    <>
      <Table
        caption={say('set-up-bag-types')}
        columns={[
          { head: say('plant-name') },
          { head: say('plant-code') },
          { head: say('set-up-usual-tare-grams'), align: 'number' },
          { head: say('set-up-safe-load-grams'), align: 'number' },
          { head: say('dryer-then') },
        ]}
        rows={bagTypes.map((type) => ({
          key: type.id,
          cells: [
            type.name,
            type.code,
            `${kilogramsText(type.usualTareGrams)} kg (${kilogramsText(type.leastTareGrams)}–${kilogramsText(type.mostTareGrams)})`,
            `${kilogramsText(type.safeLoadGrams)} kg`,
            <a href={`/set-up/bag-types?change=${type.id}`}>{say('set-up-change')}</a>,
          ],
        }))}
      />
      <StepForm
        {...props}
        to="bag-types"
        title={old === undefined ? 'set-up-bag-type' : 'set-up-bag-type-change'}
        says={old === undefined ? 'set-up-add' : 'set-up-save'}
      >
        {(why) => (
          <>
            {old === undefined ? null : <HiddenEntry name="insteadOf" value={old.id} />}
            <Text name="name" why={why} value={old?.name} />
            <Text name="code" why={why} value={old?.code ?? code} isCode />
            <Amount name="usualTareGrams" why={why} value={kilograms(old?.usualTareGrams)} unit="kg" />
            <Amount name="leastTareGrams" why={why} value={kilograms(old?.leastTareGrams)} unit="kg" />
            <Amount name="mostTareGrams" why={why} value={kilograms(old?.mostTareGrams)} unit="kg" />
            <Amount name="safeLoadGrams" why={why} value={kilograms(old?.safeLoadGrams)} unit="kg" />
          </>
        )}
      </StepForm>
    </>
  );
}

export function GradeForm(props: StepFormProps): VNode {
  const { plant, usualNets } = props.state;
  return (
    <>
      <Table
        caption={say('plant-grades')}
        columns={[
          { head: say('plant-name') },
          { head: say('plant-code') },
          { head: say('plant-tipping') },
          { head: say('plant-specification') },
          { head: say('set-up-usual-net') },
        ]}
        rows={plant.grades.map((grade) => {
          const net = usualNets.get(grade.id);
          const limits = grade.specification ?? [];
          return {
            key: grade.id,
            cells: [
              grade.name,
              grade.code,
              say(`tipping-${grade.tippingRule}`),
              limits.map(({ property, maximum }) => `${property} ≤ ${maximum ?? '–'}`).join('; '),
              net === undefined
                ? say('plant-none')
                : `${kilogramsText(net.leastNetGrams)}–${kilogramsText(net.mostNetGrams)} kg`,
            ],
          };
        })}
      />
      <StepForm {...props} to="grades" title="set-up-grade" says="set-up-add">
        {(why) => (
          <>
            <Text name="name" why={why} />
            <Text name="code" why={why} isCode />
            <ChoiceEntry
              name="tippingRule"
              label={say('set-up-tipping-rule')}
              as="tiles"
              required
              value="released-only"
              choices={['released-only', 'tip-at-risk'].map((value) => ({
                value,
                says: say(`tipping-${value}`),
                about: say(`set-up-${value}-says`),
              }))}
              trouble={why}
            />
            <p>{say('set-up-limits-says')}</p>
            {limitRows.map((row) => (
              <LimitRow key={row} row={row} why={why} />
            ))}
          </>
        )}
      </StepForm>
      {plant.grades.length === 0 ? null : <UsualNetForm {...props} />}
    </>
  );
}

/** The first two rows begin with what most sugar is judged by; they are examples and may be written over. */
const exampleProperties = ['moisture-percent', 'colour-iu'];

function LimitRow({ row, why }: { readonly row: number; readonly why: FormTrouble | null }): VNode {
  return (
    <div class="set-up-row">
      <TextEntry
        name={`property${row}`}
        label={say('set-up-property', { row })}
        value={exampleProperties[row - 1] ?? ''}
        isCode
        maxLength={40}
        trouble={why}
      />
      <TextEntry name={`method${row}`} label={say('set-up-method', { row })} isCode maxLength={60} trouble={why} />
      <NumberEntry name={`maximum${row}`} label={say('set-up-maximum', { row })} trouble={why} />
    </div>
  );
}

function UsualNetForm(props: StepFormProps): VNode {
  const { grades } = props.state.plant;
  return (
    <StepForm {...props} to="grades/usual-nets" title="set-up-usual-net" says="set-up-save">
      {(why) => (
        <>
          <p>{say('set-up-usual-net-says')}</p>
          <ChoiceEntry
            name="gradeId"
            label={say('dryer-grade')}
            required
            value={grades.length === 1 ? grades[0]?.id : undefined}
            choices={grades.map(({ id, name, code }) => ({ value: id, says: name, about: code }))}
            trouble={why}
          />
          <Amount name="leastNetGrams" why={why} unit="kg" />
          <Amount name="mostNetGrams" why={why} unit="kg" />
        </>
      )}
    </StepForm>
  );
}
