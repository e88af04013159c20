import type { VNode } from 'preact';
import { mayDo } from '../platform/actor.js';
import { languages, type Language } from '../platform/sentences/language.js';
import { say } from '../platform/sentences/sentences.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import { Act, ActLink } from '../platform/web/kit/act.js';
import { ChoiceEntry } from '../platform/web/kit/entries.js';
import { EntryForm } from '../platform/web/kit/entry-form.js';
import { Figures } from '../platform/web/kit/figures.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import type { CustomerRow, SiteRow } from './plant-rows.js';

interface CustomerProps {
  readonly viewer: Viewer;
  readonly customer: CustomerRow;
  readonly site: SiteRow;
  readonly trouble?: FormTrouble | null;
}

/** A customer: what they are called, where they are, and in which language they get their papers. */
export function customerPage({ viewer, customer, site, trouble = null }: CustomerProps): VNode {
  const { code, gln, name, address, telephone } = customer;
  return (
    <Shell title={say('customer-title', { code })} viewer={viewer}>
      <p class="sentence">{name ?? say('plant-name-removed')}</p>
      <Figures
        of={[
          { label: say('customer-code'), value: code },
          { label: say('plant-gln'), value: gln ?? say('plant-none') },
          { label: say('customer-address'), value: address ?? say('plant-none') },
          { label: say('customer-telephone'), value: telephone ?? say('plant-none') },
        ]}
      />
      <h2>{say('customer-papers')}</h2>
      {mayDo(viewer.actor.roles, 'keep-deliveries') ? (
        <EntryForm viewer={viewer} action={`/customers/${customer.id}`} trouble={trouble} id="papers">
          <PapersChoice ofSite={site.paperLanguage} value={customer.paperLanguage} trouble={trouble} />
          <Act says={say('customer-papers-set')} />
        </EntryForm>
      ) : (
        <p>{papersOf(customer, site.paperLanguage)}</p>
      )}
      <p class="acts">
        <ActLink href="/deliveries" says={say('customer-deliveries')} />
      </p>
    </Shell>
  );
}

interface PapersChoiceProps {
  readonly ofSite: Language;
  /** Null: as the site's papers. */
  readonly value: Language | null;
  readonly trouble: FormTrouble | null;
}

/** The language of a customer's papers: the plant's, or one of their own. */
export function PapersChoice({ ofSite, value, trouble }: PapersChoiceProps): VNode {
  const asSite = { value: '', says: say(`papers-language-${ofSite}`), about: say('customer-papers-as-site') };
  return (
    <ChoiceEntry
      name="paperLanguage"
      label={say('customer-papers-choice')}
      hint={say('customer-papers-says')}
      as="tiles"
      value={value ?? ''}
      choices={[asSite, ...languageChoices()]}
      trouble={trouble}
    />
  );
}

/** The languages that papers can be in, to choose from. */
export function languageChoices(): readonly { readonly value: Language; readonly says: string }[] {
  return languages.map((value) => ({ value, says: say(`papers-language-${value}`) }));
}

/** In which language a customer gets papers, and whether that is the plant's choice. */
export function papersOf({ paperLanguage }: CustomerRow, ofSite: Language): string {
  return paperLanguage === null ? say('papers-as-site', { language: ofSite }) : say(`papers-language-${paperLanguage}`);
}
