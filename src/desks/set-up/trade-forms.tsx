import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { PapersChoice, papersOf } from '../../plant/customer.page.js';
import { ChoiceEntry } from '../../platform/web/kit/entries.js';
import { fieldId } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { nextCode } from './read-steps.js';
import { isRiskLimitMissing } from './set-up-state.js';
import { Amount, StepForm, Text, type StepFormProps } from './step-kit.js';

export function FormatForm(props: StepFormProps): VNode {
  const { formats, grades } = props.state.plant;
  if (grades.length === 0) return <p>{say('set-up-format-needs-grade')}</p>;
  return (
    <>
      <Table
        caption={say('plant-formats')}
        columns={[
          { head: say('plant-name') },
          { head: say('plant-gtin') },
          { head: say('plant-takes') },
          { head: say('plant-printed'), align: 'code' },
        ]}
        rows={formats.map(({ id, name, gtin, gradeCodes, codePattern }) => ({
          key: id,
          cells: [name, gtin, gradeCodes.join(', '), codePattern],
        }))}
      />
      <StepForm {...props} to="formats" title="set-up-format" says="set-up-add">
        {(why) => (
          <>
            <Text name="name" why={why} />
            <Text name="code" why={why} isCode />
            <Text name="gtin" why={why} isCode />
            <Amount name="nominalGrams" why={why} unit="g" />
            <Grades grades={grades} why={why} />
            <Amount name="packTareGrams" why={why} unit="g" />
            <Amount name="packsPerPallet" why={why} />
            <Amount name="palletTareGrams" why={why} unit="kg" />
            <Text name="codePattern" why={why} value={'L{y}{ddd}{line}{shift} {HH}:{mm}'} isCode />
            <Amount name="bestBeforeMonths" why={why} isOptional />
            <Amount name="lowerGrams" why={why} unit="g" />
            <Amount name="upperGrams" why={why} unit="g" />
          </>
        )}
      </StepForm>
    </>
  );
}

interface GradesProps {
  readonly grades: readonly { readonly id: string; readonly name: string; readonly code: string }[];
  readonly why: FormTrouble | null;
}

/** Which grades a format takes: boxes to tick, the only one ticked. */
function Grades({ grades, why }: GradesProps): VNode {
  const before = why?.entered['gradeIds'];
  const chosen = before === undefined ? (grades.length === 1 ? [grades[0]?.id] : []) : [before].flat();
  const wrong = why?.fields['gradeIds'];
  return (
    <fieldset class="tiles" id={fieldId('gradeIds')} data-field="gradeIds" tabIndex={-1}>
      <legend>{say('set-up-grade-ids')}</legend>
      <div>
        {grades.map(({ id, name, code }) => (
          <label key={id} class="tile">
            <input type="checkbox" name="gradeIds" value={id} checked={chosen.includes(id)} />
            <span>
              {name}
              <small>{code}</small>
            </span>
          </label>
        ))}
      </div>
      <p class="wrong" hidden={wrong === undefined}>
        {wrong}
      </p>
    </fieldset>
  );
}

export function PlaceForm(props: StepFormProps): VNode {
  const { places } = props.state.plant;
  return (
    <>
      <Table
        caption={say('plant-places')}
        columns={[{ head: say('plant-code') }, { head: say('plant-kind') }]}
        rows={places.map(({ id, code, kind }) => ({ key: id, cells: [code, say(`place-${kind}`)] }))}
      />
      <StepForm {...props} to="places" title="set-up-place" says="set-up-add">
        {(why) => (
          <>
            <Text name="code" why={why} isCode />
            <ChoiceEntry
              name="kind"
              label={say('plant-kind')}
              as="tiles"
              required
              value="store"
              choices={['store', 'dock', 'line'].map((value) => ({ value, says: say(`place-${value}`) }))}
              trouble={why}
            />
          </>
        )}
      </StepForm>
    </>
  );
}

export function CustomerForm(props: StepFormProps): VNode {
  const { customers, site } = props.state.plant;
  const code = nextCode(
    'K',
    customers.map((customer) => customer.code),
  );
  return (
    <>
      <Table
        caption={say('plant-customers')}
        columns={[
          { head: say('plant-name') },
          { head: say('plant-code') },
          { head: say('plant-gln'), align: 'code' },
          { head: say('plant-papers') },
        ]}
        rows={customers.map((customer) => ({
          key: customer.id,
          cells: [
            customer.name ?? say('plant-name-removed'),
            <a href={`/customers/${customer.id}`}>{customer.code}</a>,
            customer.gln ?? say('plant-none'),
            papersOf(customer, site.paperLanguage),
          ],
        }))}
      />
      <StepForm {...props} to="customers" title="set-up-customer" says="set-up-add">
        {(why) => (
          <>
            <Text name="name" why={why} />
            <Text name="code" why={why} value={code} isCode />
            <Text name="address" why={why} isLong />
            <Text name="customerGln" why={why} isCode isOptional />
            <PapersChoice ofSite={site.paperLanguage} value={null} trouble={why} />
          </>
        )}
      </StepForm>
    </>
  );
}

export function RulesForm(props: StepFormProps): VNode {
  const { vehicleCheck, tipAtRisk } = props.state;
  const mayDecide = mayDo(props.viewer.actor.roles, 'decide');
  const says = (code: string) => <p>{say(code)}</p>;
  return (
    <>
      {vehicleCheck === null ? null : (
        <ul>
          {vehicleCheck.checkPoints.map(({ code, text }) => (
            <li key={code}>{text}</li>
          ))}
        </ul>
      )}
      {vehicleCheck === null || mayDecide ? (
        <StepForm
          {...props}
          to={vehicleCheck === null ? 'rules/vehicle-check' : 'rules/vehicle-check/later'}
          title="set-up-vehicle-check"
          says="set-up-save"
        >
          {(why) => (
            <Text
              name="points"
              why={why}
              isLong
              value={vehicleCheck?.checkPoints.map(({ text }) => text).join('\n') ?? say('set-up-points-example')}
            />
          )}
        </StepForm>
      ) : (
        says('set-up-quality-changes')
      )}
      {isRiskLimitMissing(props.state) || (tipAtRisk !== null && mayDecide) ? (
        <StepForm
          {...props}
          to={tipAtRisk === null ? 'rules/risk-limits' : 'rules/risk-limits/later'}
          title="set-up-risk-limits"
          says="set-up-save"
        >
          {(why) => (
            <>
              <Amount name="mostWaitingBagCount" why={why} />
              <Amount name="mostWaitingGrams" why={why} unit="kg" />
            </>
          )}
        </StepForm>
      ) : null}
    </>
  );
}
