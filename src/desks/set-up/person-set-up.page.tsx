import type { ComponentChildren, VNode } from 'preact';
import type { PersonRow } from '../../people/people.js';
import { personRoles } from '../../people/person.form.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { PrintSheet } from '../../platform/web/kit/print-sheet.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { matrixSymbol } from '../../platform/printing/symbols.js';

interface PersonProps {
  readonly viewer: Viewer;
  readonly person: PersonRow;
  readonly trouble: { readonly of: string; readonly why: FormTrouble } | null;
}

/** One person: roles, and what they prove themselves by. A PIN is chosen by nobody but the person. */
export function personSetUpPage({ viewer, person, trouble }: PersonProps): VNode {
  const form = (
    to: string,
    says: string,
    children: ComponentChildren,
    tone: 'asked' | 'plain' | 'careful' = 'plain',
  ) => (
    <EntryForm
      viewer={viewer}
      action={`/set-up/people/${person.id}/${to}`}
      trouble={trouble?.of === to ? trouble.why : null}
      id={`form-${to}`}
    >
      {children}
      <Act says={say(says)} tone={tone} />
    </EntryForm>
  );
  const free = personRoles.filter((role) => !person.roles.includes(role));
  const why = trouble?.of === 'roles' ? trouble.why : null;
  const choices = free.map((role) => ({ value: role, says: say(`role-${role}`) }));
  return (
    <Shell title={person.name ?? person.code} viewer={viewer}>
      <p>{say('person-set-up-code', { code: person.code })}</p>
      <h2>{say('people-roles')}</h2>
      {person.roles.length === 0 ? <p>{say('no-roles')}</p> : null}
      {person.roles.map((role) => (
        <div key={role}>
          <p>{say(`role-${role}`)}</p>
          {form('role-ends', 'person-end-role', <HiddenEntry name="role" value={role} />)}
        </div>
      ))}
      {person.name === null
        ? null
        : form(
            'roles',
            'person-give-role',
            <ChoiceEntry name="role" label={say('set-up-role')} required choices={choices} trouble={why} />,
          )}
      <h2>{say('people-proofs')}</h2>
      <p>
        {person.proofs.length === 0 ? say('no-proofs') : person.proofs.map((one) => say(`proof-${one}`)).join(', ')}
      </p>
      {person.name === null ? null : form('passwords', 'person-give-password', <p>{say('person-password-says')}</p>)}
      {person.name === null ? null : form('badges', 'person-give-badge', <p>{say('person-badge-says')}</p>)}
      <p class="quiet">{say('person-pin-says')}</p>
      {person.name === null || person.roles.length > 0
        ? null
        : form('name-removals', 'person-remove-name', <p>{say('person-remove-says')}</p>, 'careful')}
      <p class="acts">
        <ActLink href="/set-up/people" says={say('person-back')} />
      </p>
    </Shell>
  );
}

interface SecretProps {
  readonly viewer: Viewer;
  readonly person: PersonRow;
  /** Null where the same form was sent again: a secret is shown once. */
  readonly secret: string | null;
  readonly asAt: string;
}

/** A one-time password to hand over, on a slip. */
export function passwordPage({ viewer, person, secret, asAt }: SecretProps): VNode {
  const name = person.name ?? person.code;
  return (
    <Shell title={say('password-slip-title', { name })} viewer={viewer}>
      {secret === null ? (
        <p class="sentence">{say('secret-shown-before')}</p>
      ) : (
        <PrintSheet viewer={viewer} title={say('password-slip-title', { name })} asAt={asAt}>
          <p>{say('password-slip-code', { code: person.code })}</p>
          <p class="digits code">{secret}</p>
          <p>{say('password-slip-says')}</p>
        </PrintSheet>
      )}
      <Ways person={person} />
    </Shell>
  );
}

/** A badge to print and cut out: its code as a symbol that the tablets' scanners read. */
export function badgePage({ viewer, person, secret, asAt }: SecretProps): VNode {
  const name = person.name ?? person.code;
  return (
    <Shell title={say('badge-title', { name })} viewer={viewer}>
      {secret === null ? (
        <p class="sentence">{say('secret-shown-before')}</p>
      ) : (
        <PrintSheet viewer={viewer} title={say('badge-title', { name })} asAt={asAt}>
          <div class="badge-card">
            <p class="digits">{name}</p>
            <BadgeSymbol text={secret} />
            <p class="code">{secret}</p>
            <p>{say('badge-says')}</p>
          </div>
        </PrintSheet>
      )}
      <Ways person={person} />
    </Shell>
  );
}

function BadgeSymbol({ text }: { readonly text: string }): VNode {
  const { widthMm, heightMm, darks } = matrixSymbol('data-matrix', text, 1);
  const path = darks.map((dark) => `M${dark.xMm} ${dark.yMm}h${dark.widthMm}v${dark.heightMm}h${-dark.widthMm}z`);
  return (
    <svg width={`${widthMm}mm`} height={`${heightMm}mm`} viewBox={`0 0 ${widthMm} ${heightMm}`} role="img">
      <title>{say('badge-symbol')}</title>
      <rect width={widthMm} height={heightMm} fill="#fff" />
      <path d={path.join('')} fill="#000" />
    </svg>
  );
}

function Ways({ person }: { readonly person: PersonRow }): VNode {
  return (
    <p class="acts">
      <ActLink href={`/set-up/people/${person.id}`} says={person.name ?? person.code} />
      <ActLink href="/set-up/people" says={say('person-back')} tone="asked" />
    </p>
  );
}
