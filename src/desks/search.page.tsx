import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import type { Viewer } from '../platform/web/request.js';
import { ActLink } from '../platform/web/kit/act.js';
import { Shell } from '../platform/web/shell.js';
import { desks, waysOf } from '../platform/web/ways.js';
import type { Finding } from './find-subjects.js';

interface SearchPageProps {
  readonly viewer: Viewer;
  readonly code: string;
  /** What the code may mean; null before anything was asked. */
  readonly choices: readonly (Finding & { readonly meant: string })[] | null;
}

/** The one search box: whatever was printed or typed leads to its thread. */
export function searchPage({ viewer, code, choices }: SearchPageProps): VNode {
  return (
    <Shell title={say('search-title')} viewer={viewer}>
      {searchBox(code)}
      {choices === null ? <p class="quiet">{say('search-hint')}</p> : <Choices code={code} choices={choices} />}
      {choices === null ? <Desks viewer={viewer} /> : null}
    </Shell>
  );
}

/** The desks that this person may sit at. */
function Desks({ viewer }: { readonly viewer: Viewer }): VNode {
  return (
    <nav class="acts" aria-label={say('home-desks')}>
      {waysOf(desks, viewer.actor.roles).map(({ href, code }) => (
        <ActLink key={href} href={href} says={say(code)} />
      ))}
    </nav>
  );
}

/** The box itself; it stands on top of every thread too. A scanner types into it and presses Enter. */
export function searchBox(code: string): VNode {
  return (
    <form class="card" method="get" action="/thread" role="search" aria-label={say('search-label')}>
      <label for="code">{say('search-label')}</label>
      <div class="search">
        <input
          id="code"
          name="code"
          type="text"
          value={code}
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          autofocus
        />
        <button type="submit">{say('search-button')}</button>
      </div>
    </form>
  );
}

function Choices({
  code,
  choices,
}: Required<Pick<SearchPageProps, 'code'>> & { choices: NonNullable<SearchPageProps['choices']> }): VNode {
  if (choices.length === 0) {
    return (
      <section class="card refusal" role="alert">
        <p>{say('code-not-found', { code })}</p>
      </section>
    );
  }
  return (
    <section class="card" aria-labelledby="which">
      <h2 id="which">{say('search-which', { code })}</h2>
      <ul>
        {choices.map((choice) => (
          <li key={choice.meant}>
            <a
              href={`/thread?code=${encodeURIComponent(code)}&meant=${encodeURIComponent(choice.meant)}${timeOf(choice)}`}
            >
              {say(`thread-title-${choice.subject.kind}`, {
                name: choice.subject.name,
                at: choice.subject.localTime ?? '',
              })}
            </a>{' '}
            <span class="quiet">{choice.about}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function timeOf(choice: Finding): string {
  return choice.subject.localTime === null ? '' : `&at=${encodeURIComponent(choice.subject.localTime)}`;
}
