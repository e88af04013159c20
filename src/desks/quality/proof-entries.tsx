import type { VNode } from 'preact';
import type { ProofWay } from '../../people/prove-again.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { TextEntry } from '../../platform/web/kit/entries.js';

/** What somebody is asked for who proves once more who they are. */
export function ProofEntries({
  way,
  trouble,
}: {
  readonly way: ProofWay;
  readonly trouble: FormTrouble | null;
}): VNode {
  if (way === 'password') {
    return (
      <TextEntry
        name="password"
        type="password"
        label={say('lift-password')}
        autocomplete="current-password"
        trouble={trouble}
        required
      />
    );
  }
  return (
    <>
      <TextEntry name="badge" type="password" label={say('lift-badge')} trouble={trouble} required />
      <TextEntry name="pin" type="password" label={say('lift-pin')} trouble={trouble} required />
    </>
  );
}
