import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, TextEntry } from '../../platform/web/kit/entries.js';
import type { Viewer } from '../../platform/web/request.js';
import { ActPage } from './act.page.js';
import type { LineNow } from './line-rows.js';
import { choicesOf } from './tip.page.js';

interface PersonProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly people: readonly { readonly id: string; readonly name: string }[];
}

/** Who works from here on: a badge, or a name and a PIN. It comes back to the same line. */
export function personPage({ viewer, at, people }: PersonProps): VNode {
  const next = `/line/${at.line.id}`;
  return (
    <ActPage viewer={viewer} at={at} title={say('person-title')}>
      {viewer.deviceCode === null ? (
        <p>
          {say('person-not-shared')} <a href={`/sign-in?next=${encodeURIComponent(next)}`}>{say('person-sign-in')}</a>
        </p>
      ) : (
        <>
          <form class="entry" method="post" action="/sign-in">
            <HiddenEntry name="proof" value="badge" />
            <HiddenEntry name="next" value={next} />
            <TextEntry name="badge" label={say('field-badge')} type="password" required maxLength={60} autofocus />
            <Act says={say('person-go-on')} />
          </form>
          {people.length === 0 ? null : (
            <form class="entry" method="post" action="/sign-in">
              <HiddenEntry name="proof" value="pin" />
              <HiddenEntry name="next" value={next} />
              <ChoiceEntry name="person" label={say('field-person')} as="tiles" choices={choicesOf(people)} required />
              <TextEntry name="pin" label={say('field-pin')} type="password" required maxLength={8} />
              <Act says={say('person-go-on')} />
            </form>
          )}
        </>
      )}
    </ActPage>
  );
}
