import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry, TickEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { ActPage } from './act.page.js';
import type { LineNow } from './line-rows.js';

interface LineProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly trouble?: FormTrouble | null | undefined;
}

interface StartProps extends LineProps {
  readonly formats: readonly { readonly id: string; readonly code: string; readonly name: string }[];
}

/** A run starts: one touch on its format. */
export function startPage({ viewer, at, formats, trouble }: StartProps): VNode {
  const isRefused = trouble?.code === 'hopper-holds-other-grade' || trouble?.code === 'changeover-not-finished';
  return (
    <ActPage viewer={viewer} at={at} title={say('line-start-run')} startsAtBack>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/run/start`} trouble={trouble}>
        <ChoiceEntry
          name="formatId"
          label={say('field-format')}
          as="tiles"
          choices={formats.map(({ id, code, name }) => ({ value: id, says: name, about: code }))}
          required
          trouble={trouble}
        />
        {isRefused ? (
          <TickEntry
            name="happened"
            label={say('field-happened')}
            hint={say('field-happened-hint')}
            trouble={trouble}
          />
        ) : null}
        <Act says={say('line-start-run')} />
      </EntryForm>
      {trouble?.code === 'changeover-not-finished' ? (
        <ActLink href={`/line/${at.line.id}/changeover`} says={say('line-to-changeover')} tone="asked" />
      ) : null}
      {trouble?.code === 'hopper-holds-other-grade' ? (
        <ActLink href={`/line/${at.line.id}/level`} says={say('line-level')} tone="asked" />
      ) : null}
    </ActPage>
  );
}

/** The last pack is out: the counter, and what lies loose. */
export function closePage({ viewer, at, trouble }: LineProps): VNode {
  return (
    <ActPage viewer={viewer} at={at} title={say('line-to-run')}>
      <CloseForm viewer={viewer} action={`/line/${at.line.id}/run/close`} trouble={trouble} />
    </ActPage>
  );
}

export function CloseForm({ viewer, action, trouble }: Omit<LineProps, 'at'> & { readonly action: string }): VNode {
  return (
    <EntryForm viewer={viewer} action={action} trouble={trouble}>
      <div class="side-by-side">
        <NumberEntry
          name="packCount"
          label={say('field-counter')}
          unit={say('unit-packs')}
          required
          trouble={trouble}
          autofocus
        />
        <NumberEntry
          name="loosePackCount"
          label={say('field-loose-none')}
          unit={say('unit-packs')}
          required
          trouble={trouble}
        />
      </div>
      <Act says={say('run-close-act')} />
    </EntryForm>
  );
}

/** The code as it stands on a pack, beside the one that is meant. */
export function codePage({ viewer, at, intended, trouble }: LineProps & { readonly intended: string | null }): VNode {
  return (
    <ActPage viewer={viewer} at={at} title={say('line-to-code')}>
      {intended === null ? null : (
        <p class="sentence">
          {say('code-intended')} <strong class="code code-text">{intended}</strong>
        </p>
      )}
      <p>{say('code-says')}</p>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/code`} trouble={trouble}>
        <TextEntry
          name="code"
          label={say('field-code-on-pack')}
          isCode
          required
          maxLength={120}
          trouble={trouble}
          autofocus
        />
        <NumberEntry
          name="packCount"
          label={say('field-counter-before')}
          hint={say('field-counter-before-hint')}
          trouble={trouble}
        />
        <div class="acts">
          <Act says={say('line-record')} />
          <ActLink href={`/lines/${at.line.id}/coder-clock`} says={say('code-to-clock')} />
        </div>
      </EntryForm>
    </ActPage>
  );
}

/** A new roll is on the machine. */
export function filmPage({ viewer, at, film, trouble }: LineProps & { readonly film: string }): VNode {
  const isNew = trouble?.code === 'film-lot-unknown';
  const kinds = ['film', 'preprinted-bag', 'label', 'glue'].map((value) => ({
    value,
    says: say(`film-kind-${value}`),
  }));
  return (
    <ActPage viewer={viewer} at={at} title={say('line-to-film')}>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/film`} trouble={trouble}>
        <TextEntry
          name="film"
          label={say('field-film')}
          isCode
          required
          value={film}
          maxLength={60}
          trouble={trouble}
          autofocus
        />
        <NumberEntry
          name="packCount"
          label={say('field-counter-before')}
          hint={say('field-counter-before-hint')}
          trouble={trouble}
        />
        {isNew ? (
          <>
            <ChoiceEntry name="kind" label={say('field-film-kind')} as="tiles" choices={kinds} trouble={trouble} />
            <TextEntry name="supplierCode" label={say('field-film-supplier')} maxLength={60} trouble={trouble} />
          </>
        ) : null}
        <Act says={say('line-record')} />
      </EntryForm>
    </ActPage>
  );
}
