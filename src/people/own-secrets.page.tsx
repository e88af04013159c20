import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import type { Viewer } from '../platform/web/request.js';
import { BarePage, Shell } from '../platform/web/shell.js';
import { FormTrouble } from './form-trouble.js';

interface OwnSecretsProps {
  readonly viewer: Viewer;
  readonly personCode: string;
  /** The person came in with a one-time password: nothing else is open before it is changed. */
  readonly mustChange: boolean;
  readonly trouble: readonly string[];
  readonly formKey: string;
}

/** Where a person chooses a new password, and the PIN for shared tablets. */
export function ownSecretsPage(props: OwnSecretsProps): VNode {
  const { viewer, mustChange, trouble } = props;
  const content = (
    <>
      <FormTrouble sentences={trouble} />
      {mustChange ? <p class="sentence">{say('one-time-password-says')}</p> : null}
      <PasswordForm {...props} />
      {mustChange ? <SignOut viewer={viewer} /> : <PinForm {...props} />}
    </>
  );
  const title = say('change-password-title');
  return mustChange ? (
    <BarePage title={title}>{content}</BarePage>
  ) : (
    <Shell title={title} viewer={viewer}>
      {content}
    </Shell>
  );
}

function PasswordForm({ viewer, personCode, formKey }: OwnSecretsProps): VNode {
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

function PinForm({ viewer, formKey }: OwnSecretsProps): VNode {
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
