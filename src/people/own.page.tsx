import type { VNode } from 'preact';
import { languages } from '../platform/sentences/language.js';
import { say } from '../platform/sentences/sentences.js';
import { Act } from '../platform/web/kit/act.js';
import { ChoiceEntry } from '../platform/web/kit/entries.js';
import { EntryForm } from '../platform/web/kit/entry-form.js';
import type { Viewer } from '../platform/web/request.js';
import { BarePage, Shell } from '../platform/web/shell.js';
import { FormTrouble } from './form-trouble.js';

interface OwnPageProps {
  readonly viewer: Viewer;
  readonly personCode: string;
  /** The person came in with a one-time password: nothing else is open before it is changed. */
  readonly mustChange: boolean;
  readonly trouble: readonly string[];
  readonly formKey: string;
}

/** A person's own page: the language, a new password, and the PIN for shared tablets. */
export function ownPage(props: OwnPageProps): VNode {
  const { viewer, mustChange, trouble } = props;
  const content = (
    <>
      <FormTrouble sentences={trouble} />
      {mustChange ? <p class="sentence">{say('one-time-password-says')}</p> : null}
      {mustChange ? null : <LanguageForm viewer={viewer} />}
      <PasswordForm {...props} />
      {mustChange ? <SignOut viewer={viewer} /> : <PinForm {...props} />}
    </>
  );
  const title = say(mustChange ? 'change-password-title' : 'own-page-title');
  return mustChange ? (
    <BarePage title={title}>{content}</BarePage>
  ) : (
    <Shell title={title} viewer={viewer}>
      {content}
    </Shell>
  );
}

function LanguageForm({ viewer }: { readonly viewer: Viewer }): VNode {
  const choices = languages.map((language) => ({ value: language, says: say('language-in-itself', {}, language) }));
  return (
    <EntryForm viewer={viewer} action="/me/language" class="card">
      <h2>{say('own-language')}</h2>
      <ChoiceEntry
        name="language"
        label={say('own-language-label')}
        choices={choices}
        as="tiles"
        value={viewer.language}
        required
      />
      <Act says={say('set-own-language')} />
    </EntryForm>
  );
}

function PasswordForm({ viewer, personCode, formKey }: OwnPageProps): VNode {
  return (
    <form class="card" method="post" action="/change-password">
      <h2>{say('new-password')}</h2>
      <Hidden csrf={viewer.csrfToken} formKey={formKey} />
      <label for="user">{say('people-field-code')}</label>
      <input id="user" type="text" autocomplete="username" value={personCode} readOnly />
      <label for="old-password">{say('people-field-oldPassword')}</label>
      <Secret id="old-password" name="oldPassword" autocomplete="current-password" />
      <label for="new-password">
        {say('people-field-newPassword')}
        <span class="hint">{say('new-password-hint')}</span>
      </label>
      <Secret id="new-password" name="newPassword" autocomplete="new-password" />
      <p>
        <button type="submit">{say('change-password')}</button>
      </p>
    </form>
  );
}

function PinForm({ viewer, formKey }: OwnPageProps): VNode {
  return (
    <form class="card" method="post" action="/change-pin">
      <h2>{say('new-pin')}</h2>
      <Hidden csrf={viewer.csrfToken} formKey={formKey} />
      <label for="pin-password">{say('people-field-password')}</label>
      <Secret id="pin-password" name="password" autocomplete="current-password" />
      <label for="new-pin">
        {say('people-field-pin')}
        <span class="hint">{say('new-pin-hint')}</span>
      </label>
      <input id="new-pin" name="pin" type="password" inputMode="numeric" autocomplete="off" maxLength={8} required />
      <p>
        <button type="submit">{say('set-pin')}</button>
      </p>
    </form>
  );
}

function SignOut({ viewer }: { readonly viewer: Viewer }): VNode {
  return (
    <form method="post" action="/sign-out">
      <input type="hidden" name="csrf" value={viewer.csrfToken} />
      <button class="plain" type="submit">
        {say('sign-out')}
      </button>
    </form>
  );
}

function Hidden({ csrf, formKey }: { readonly csrf: string; readonly formKey: string }): VNode {
  return (
    <>
      <input type="hidden" name="csrf" value={csrf} />
      <input type="hidden" name="formKey" value={formKey} />
    </>
  );
}

interface SecretProps {
  readonly id: string;
  readonly name: string;
  readonly autocomplete: 'current-password' | 'new-password';
}

function Secret({ id, name, autocomplete }: SecretProps): VNode {
  return <input id={id} name={name} type="password" autocomplete={autocomplete} maxLength={200} required />;
}
