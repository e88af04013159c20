import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import { languageChoices } from '../../plant/customer.page.js';
import { ChoiceEntry } from '../../platform/web/kit/entries.js';
import { Table } from '../../platform/web/kit/table.js';
import { nextCode } from './read-steps.js';
import { Amount, StepForm, Text, type StepFormProps } from './step-kit.js';

const codeOf = ({ code }: { readonly code: string }): string => code;

export function SiteForm(props: StepFormProps): VNode {
  const { site } = props.state.plant;
  const zones = [...new Set(['UTC', site.timeZone, ...Intl.supportedValuesOf('timeZone')])];
  return (
    <>
      <StepForm {...props} to="site" title="set-up-site" says="set-up-save">
        {(why) => (
          <>
            <Text name="name" why={why} value={site.name} />
            <ChoiceEntry
              name="timeZone"
              label={say('set-up-time-zone')}
              hint={say('set-up-time-zone-hint')}
              required
              value={site.timeZone}
              choices={zones.map((zone) => ({ value: zone, says: zone }))}
              trouble={why}
            />
            <Text name="productionDayStart" why={why} value={site.productionDayStart} />
            <Text name="companyPrefix" why={why} value={site.companyPrefix} isCode />
            <Text name="gln" why={why} value={site.gln} isCode />
          </>
        )}
      </StepForm>
      <StepForm {...props} to="site/papers" title="set-up-papers" says="set-up-save">
        {(why) => (
          <ChoiceEntry
            name="paperLanguage"
            label={say('set-up-paper-language')}
            hint={say('set-up-paper-language-hint')}
            as="tiles"
            required
            value={site.paperLanguage}
            choices={languageChoices()}
            trouble={why}
          />
        )}
      </StepForm>
    </>
  );
}

export function ShiftsForm(props: StepFormProps): VNode {
  const { shiftPattern } = props.state.plant;
  const choices = ['three-by-eight', 'two-by-twelve', 'own'].map((value) => ({
    value,
    says: say(`set-up-shifts-${value}`),
    about: say(`set-up-shifts-${value}-says`),
  }));
  return (
    <>
      {shiftPattern === null ? null : (
        <Table
          caption={say('plant-shifts')}
          columns={[{ head: say('plant-code') }, { head: say('plant-name') }, { head: say('plant-starts') }]}
          rows={shiftPattern.shifts.map(({ code, name, startTime }) => ({ key: code, cells: [code, name, startTime] }))}
        />
      )}
      <StepForm {...props} to="shifts" title="set-up-shifts" says="set-up-save">
        {(why) => (
          <>
            <ChoiceEntry
              name="pattern"
              label={say('set-up-pattern')}
              as="tiles"
              required
              value="three-by-eight"
              choices={choices}
              trouble={why}
            />
            <Text name="own" why={why} isLong isOptional />
          </>
        )}
      </StepForm>
    </>
  );
}

export function ScaleForm(props: StepFormProps): VNode {
  const { scales } = props.state.plant;
  const code = nextCode(
    'S',
    scales.map(({ scale }) => scale.code),
  );
  return (
    <>
      <Table
        caption={say('plant-scales')}
        columns={[
          { head: say('plant-name') },
          { head: say('plant-interval'), align: 'number' },
          { head: say('plant-error'), align: 'number' },
        ]}
        rows={scales.map(({ scale }) => ({
          key: scale.id,
          cells: [
            `${scale.name} (${scale.code})`,
            `${scale.intervalMilligrams / 1_000_000} kg`,
            `${scale.maximumPermissibleErrorMilligrams / 1_000_000} kg`,
          ],
        }))}
      />
      {scales.length === 0 ? null : (
        <p>
          {say('set-up-scale-check-says')} <a href="/dryer/scales">{say('dryer-to-scales')}</a>
        </p>
      )}
      <StepForm {...props} to="scales" title="set-up-scale" says="set-up-add">
        {(why) => (
          <>
            <Text name="name" why={why} />
            <Text name="code" why={why} value={code} isCode />
            <Amount name="intervalKilograms" why={why} unit="kg" />
            <Amount name="errorKilograms" why={why} unit="kg" />
            <Amount name="checkEveryHours" why={why} value="24" unit="h" />
          </>
        )}
      </StepForm>
      <p class="caution">{say('plant-caution-scale')}</p>
    </>
  );
}

export function DryerForm(props: StepFormProps): VNode {
  const { dryers } = props.state.plant;
  return (
    <>
      <Table
        caption={say('plant-dryers')}
        columns={[{ head: say('plant-name') }, { head: say('plant-code') }]}
        rows={dryers.map(({ id, name, code }) => ({ key: id, cells: [name, code] }))}
      />
      <StepForm {...props} to="dryers" title="set-up-dryer" says="set-up-add">
        {(why) => (
          <>
            <Text name="name" why={why} />
            <Text name="code" why={why} value={nextCode('D', dryers.map(codeOf))} isCode />
          </>
        )}
      </StepForm>
    </>
  );
}

export function HopperForm(props: StepFormProps): VNode {
  const { hoppers } = props.state.plant;
  return (
    <>
      <Table
        caption={say('plant-hoppers')}
        columns={[
          { head: say('plant-name') },
          { head: say('plant-code') },
          { head: say('plant-capacity'), align: 'number' },
        ]}
        rows={hoppers.map(({ id, name, code, capacityGrams }) => ({
          key: id,
          cells: [name, code, `${kilogramsText(capacityGrams)} kg`],
        }))}
      />
      <StepForm {...props} to="hoppers" title="set-up-hopper" says="set-up-add">
        {(why) => (
          <>
            <Text name="name" why={why} />
            <Text name="code" why={why} value={nextCode('H', hoppers.map(codeOf))} isCode />
            <Amount name="capacityGrams" why={why} unit="kg" />
          </>
        )}
      </StepForm>
      <p class="caution">{say('plant-caution-hopper')}</p>
    </>
  );
}

export function LineForm(props: StepFormProps): VNode {
  const { lines, hoppers } = props.state.plant;
  const choices = hoppers.map(({ id, name, code }) => ({ value: id, says: name, about: code }));
  const only = choices.length === 1 ? choices[0]?.value : undefined;
  if (hoppers.length === 0) return <p>{say('set-up-line-needs-hopper')}</p>;
  return (
    <>
      <Table
        caption={say('plant-lines')}
        columns={[
          { head: say('plant-name') },
          { head: say('plant-code') },
          { head: say('plant-fed-by') },
          { head: say('plant-coder') },
        ]}
        rows={lines.map(({ id, name, code, hopperCode, coderCode }) => ({
          key: id,
          cells: [name, code, hopperCode ?? say('plant-fed-by-none'), coderCode ?? say('plant-none')],
        }))}
      />
      <StepForm {...props} to="lines" title="set-up-line" says="set-up-add">
        {(why) => (
          <>
            <Text name="name" why={why} />
            <Text name="code" why={why} value={nextCode('', lines.map(codeOf))} isCode />
            <ChoiceEntry
              name="hopperId"
              label={say('set-up-hopper-id')}
              required
              as="tiles"
              value={only}
              choices={choices}
              trouble={why}
            />
          </>
        )}
      </StepForm>
      {lines.length > 0 && hoppers.length > 1 ? <FeedForm {...props} /> : null}
    </>
  );
}

/** From now on another hopper feeds a line. */
function FeedForm(props: StepFormProps): VNode {
  const { lines, hoppers } = props.state.plant;
  const named = (rows: readonly { readonly id: string; readonly name: string; readonly code: string }[]) =>
    rows.map(({ id, name, code }) => ({ value: id, says: name, about: code }));
  return (
    <StepForm {...props} to="lines/feeds" title="set-up-feed" says="set-up-save">
      {(why) => (
        <>
          <ChoiceEntry name="lineId" label={say('set-up-line-id')} required choices={named(lines)} trouble={why} />
          <ChoiceEntry
            name="hopperId"
            label={say('set-up-hopper-id')}
            required
            choices={named(hoppers)}
            trouble={why}
          />
        </>
      )}
    </StepForm>
  );
}
