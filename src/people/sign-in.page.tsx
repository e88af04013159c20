import type { VNode } from 'preact';
import { languageNow, languages } from '../platform/sentences/language.js';
import { say } from '../platform/sentences/sentences.js';
import { BarePage } from '../platform/web/shell.js';
import { FormTrouble } from './form-trouble.js';

/** What goes on after signing in. */
interface Onward {
  readonly next: string;
  /** A form that was sent without a session, carried on; empty where there is none. */
  readonly lost: string;
}

interface SignInProps extends Onward {
  readonly trouble: readonly string[];
  /** What was entered before, without the secrets. */
  readonly entered: { readonly code: string; readonly person: string };
  /** On an enrolled tablet or handheld: its code, and those who may choose themselves and type a PIN; else null. */
  readonly shared: { readonly code: string; readonly people: readonly { id: string; name: string }[] } | null;
}

/** Where everybody comes in: at a desk by code and password, on a shared device by badge or PIN, too. */
export function signInPage({ next, lost, trouble, entered, shared }: SignInProps): VNode {
  return (
    <BarePage title={say('sign-in-title')}>
      <FormTrouble sentences={trouble} />
      {shared === null ? null : (
        <>
          <p class="quiet">{say('sign-in-on-device', { code: shared.code })}</p>
          <BadgeForm next={next} lost={lost} />
          {shared.people.length === 0 ? null : (
            <PinForm next={next} lost={lost} people={shared.people} chosen={entered.person} />
          )}
        </>
      )}
      <PasswordForm next={next} lost={lost} code={entered.code} />
      <Languages next={next} />
    </BarePage>
  );
}

/** The other languages, each in its own words: whoever cannot read this page finds theirs. */
function Languages({ next }: { readonly next: string }): VNode {
  return (
    <ul class="languages">
      {languages.map((language) => (
        <li key={language}>
          <a
            href={`/sign-in?language=${language}&next=${encodeURIComponent(next)}`}
            lang={language}
            hreflang={language}
            aria-current={language === languageNow() ? 'true' : undefined}
          >
            {say('language-in-itself', {}, language)}
          </a>
        </li>
      ))}
    </ul>
  );
}

function BadgeForm({ next, lost }: Onward): VNode {
  return (
    <form class="card" method="post" action="/sign-in">
      <h2>{say('sign-in-by-badge')}</h2>
      <Hidden proof="badge" next={next} lost={lost} />
      <label for="badge">
        {say('people-field-badge')}
        <span class="hint">{say('badge-hint')}</span>
      </label>
      <input id="badge" name="badge" type="password" autocomplete="off" maxLength={60} required autofocus />
      <p>
        <button type="submit">{say('sign-in')}</button>
      </p>
    </form>
  );
}

interface PinProps extends Onward {
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly chosen: string;
}

function PinForm({ next, lost, people, chosen }: PinProps): VNode {
  return (
    <form class="card" method="post" action="/sign-in">
      <h2>{say('sign-in-by-pin')}</h2>
      <Hidden proof="pin" next={next} lost={lost} />
      <label for="person">{say('people-field-person')}</label>
      <select id="person" name="person" required>
        <option value="">{say('choose-yourself')}</option>
        {people.map(({ id, name }) => (
          <option key={id} value={id} selected={id === chosen}>
            {name}
          </option>
        ))}
      </select>
      <label for="pin">
        {say('people-field-pin')}
        <span class="hint">{say('pin-hint')}</span>
      </label>
      <input id="pin" name="pin" type="password" inputMode="numeric" autocomplete="off" maxLength={8} required />
      <p>
        <button type="submit">{say('sign-in')}</button>
      </p>
    </form>
  );
}

function PasswordForm({ next, lost, code }: Onward & { readonly code: string }): VNode {
  return (
    <form class="card" method="post" action="/sign-in">
      <h2>{say('sign-in-by-password')}</h2>
      <Hidden proof="password" next={next} lost={lost} />
      <label for="code">{say('people-field-code')}</label>
      <input
        id="code"
        name="code"
        type="text"
        autocomplete="username"
        autocapitalize="none"
        spellcheck={false}
        maxLength={60}
        required
        value={code}
      />
      <label for="password">{say('people-field-password')}</label>
      <input id="password" name="password" type="password" autocomplete="current-password" maxLength={200} required />
      <p>
        <button type="submit">{say('sign-in')}</button>
      </p>
    </form>
  );
}

function Hidden({ proof, next, lost }: Onward & { readonly proof: string }): VNode {
  return (
    <>
      <input type="hidden" name="proof" value={proof} />
      <input type="hidden" name="next" value={next} />
      {lost === '' ? null : <input type="hidden" name="lost" value={lost} />}
    </>
  );
}
