import type { VNode } from 'preact';

type Tone = 'asked' | 'plain' | 'careful';

interface ActProps {
  readonly says: string;
  readonly name?: string | undefined;
  readonly value?: string | undefined;
  readonly tone?: Tone | undefined;
  /** The key that presses it together with Alt (and Shift, by browser); shown on the button. */
  readonly accessKey?: string | undefined;
  /** The word of the card at the line that presses it by scan. */
  readonly command?: string | undefined;
  /** Another address than the form's own, for what needs an answer at once: a device never keeps it for later. */
  readonly sendTo?: string | undefined;
}

/** Sends the form it stands in. One act is asked for on a page; the others are plain. */
export function Act({ says, name, value, tone = 'asked', accessKey, command, sendTo }: ActProps): VNode {
  return (
    <button
      type="submit"
      class={`act ${tone}`}
      name={name}
      value={value}
      accessKey={accessKey}
      formAction={sendTo}
      data-command={command}
      data-native={sendTo === undefined ? undefined : ''}
    >
      {says}
      <Key of={accessKey} />
    </button>
  );
}

interface ActLinkProps {
  readonly href: string;
  readonly says: string;
  readonly tone?: Tone | undefined;
  readonly accessKey?: string | undefined;
  readonly command?: string | undefined;
}

/** Leads to the page of an act. */
export function ActLink({ href, says, tone = 'plain', accessKey, command }: ActLinkProps): VNode {
  return (
    <a class={`act ${tone}`} href={href} accessKey={accessKey} data-command={command}>
      {says}
      <Key of={accessKey} />
    </a>
  );
}

/** Shows the access key beside what it presses: the browser tells those who hear the page by itself. */
export function Key({ of }: { readonly of: string | undefined }): VNode | null {
  return of === undefined ? null : <kbd aria-hidden="true">Alt+{of.toUpperCase()}</kbd>;
}
