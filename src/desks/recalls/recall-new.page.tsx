import type { VNode } from 'preact';
import { recallKinds, recallSurenesses } from '../../recalls/recall-words.js';
import { say } from '../../platform/sentences/sentences.js';
import { roundKilograms } from '../../platform/printing/printed-figures.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Figures } from '../../platform/web/kit/figures.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { RecallBalanceParts } from './recall-balance.js';
import { RecallCustomers } from './recall-customers.js';
import type { RecallPreview } from './recall-new.js';
import type { RecallOrigin } from './recall-origin-text.js';
import { RecallUnits } from './recall-units.js';
import { scopeKey, scopeText } from './scope-key.js';

interface RecallNewProps {
  readonly viewer: Viewer;
  readonly preview: RecallPreview;
  readonly origin: RecallOrigin | null;
  readonly trouble: FormTrouble | null;
}

/** A recall before it is opened: what it would cover, where that is, and why it is opened. */
export function recallNewPage({ viewer, preview, origin, trouble }: RecallNewProps): VNode {
  const { figures, scopes, customerNames } = preview;
  const { packs, milligrams, units, customers } = figures;
  return (
    <Shell title={say('recall-new-preview')} viewer={viewer}>
      <section class="card" aria-labelledby="covers">
        <h2 id="covers">{say('recall-new-covers')}</h2>
        <ul>
          {scopes.map((scope) => (
            <li key={scopeKey(scope)}>{scopeText(scope, viewer.timeZone)}</li>
          ))}
        </ul>
        <Figures
          of={[
            { label: say('recall-packs'), value: countText(packs.produced) },
            {
              label: say('recall-sugar'),
              value: roundKilograms(Math.round(milligrams.produced / 1000)),
              unit: 'kg',
            },
            { label: say('recall-pallets'), value: countText(units.length) },
            { label: say('recall-customers'), value: countText(customers.length) },
          ]}
        />
        <p class="quiet">{say('recall-new-likely', { packs: countText(preview.likelyPackCount) })}</p>
        <p>
          <a href="/quality/recalls/new">{say('recall-new-anew')}</a>
        </p>
      </section>
      <OpenBox viewer={viewer} preview={preview} origin={origin} trouble={trouble} />
      <RecallBalanceParts figures={figures} />
      <RecallCustomers figures={figures} names={customerNames} recallId={null} />
      <RecallUnits units={units} />
    </Shell>
  );
}

function OpenBox({ viewer, preview, origin, trouble }: RecallNewProps): VNode {
  return (
    <section class="card" aria-labelledby="open">
      <h2 id="open">{say('recall-new-open')}</h2>
      <p>{say('recall-new-open-says')}</p>
      <EntryForm viewer={viewer} id="open-recall" action="/quality/recalls/new" trouble={trouble}>
        {preview.scopes.map((scope) => (
          <HiddenEntry key={scopeKey(scope)} name="scopes" value={scopeKey(scope)} />
        ))}
        {origin === null ? null : (
          <>
            <HiddenEntry name="originKind" value={origin.kind} />
            <HiddenEntry name="originId" value={origin.id} />
          </>
        )}
        <ChoiceEntry
          name="kind"
          label={say('recall-new-kind')}
          as="tiles"
          choices={[...recallKinds]
            .reverse()
            .map((value) => ({ value, says: say(`recall-kind-${value}`), about: say(`recall-kind-${value}-about`) }))}
          trouble={trouble}
          required
        />
        <ChoiceEntry
          name="hazard"
          label={say('recall-new-hazard')}
          as="tiles"
          choices={(['safety', 'quality'] as const).map((value) => ({
            value,
            says: say(`recall-hazard-${value}`),
            about: say(`recall-hazard-${value}-about`),
          }))}
          trouble={trouble}
          required
        />
        <TextEntry
          name="reason"
          label={say('recall-new-reason')}
          hint={say('recall-new-reason-hint')}
          maxLength={1000}
          trouble={trouble}
          isLong
          required
        />
        <ChoiceEntry
          name="sureness"
          label={say('recall-new-sureness')}
          as="tiles"
          choices={recallSurenesses.map((value) => ({
            value,
            says: say(`recall-sureness-${value}`),
            about: say(`recall-sureness-${value}-about`),
          }))}
          value="possible"
          trouble={trouble}
        />
        <TextEntry
          name="surenessReason"
          label={say('recall-new-sureness-reason')}
          hint={say('recall-new-sureness-hint')}
          maxLength={1000}
          trouble={trouble}
        />
        <Act says={say('recall-new-act')} accessKey="o" />
      </EntryForm>
      <p class="quiet">{say('recall-report-law')}</p>
    </section>
  );
}
