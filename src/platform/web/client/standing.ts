import { say } from './words.js';

/** Who is signed in here now, beside the person whose page this is. */
type Standing = 'same' | 'other' | 'nobody' | 'unknown';

interface OwnSession {
  readonly person: { readonly id: string };
  readonly csrfToken: string;
}

/**
 * Looks whether the page still belongs to who is signed in, and says plainly where it does not: nothing that was typed is
 * touched. Where the same person is signed in again, the page's forms get the token of the session that is open now.
 */
export async function lookWhoIsHere(): Promise<void> {
  const { standing, csrfToken } = await askWhoIsHere();
  if (standing === 'unknown') return;
  const said = document.getElementById(lineId);
  if (standing === 'same') {
    renewTokens(csrfToken);
    said?.remove();
    if (said !== null) document.dispatchEvent(new Event(liveAgain));
  } else if (said?.dataset['standing'] !== standing) {
    said?.remove();
    sayNoLongerLive(standing);
  }
}

/** Happens to the document of a page that follows the journal again: it may have missed anything. */
export const liveAgain = 'live-again';

const lineId = 'no-longer-live';

/** Whether the page has said that it follows nothing any more. */
export function isNoLongerLive(): boolean {
  return document.getElementById(lineId) !== null;
}

async function askWhoIsHere(): Promise<{ readonly standing: Standing; readonly csrfToken: string }> {
  const nothing = { csrfToken: '' };
  try {
    const answer = await fetch('/api/sessions/me', { headers: { Accept: 'application/json' }, cache: 'no-store' });
    if (answer.status === 401) return { standing: 'nobody', ...nothing };
    if (!answer.ok) return { standing: 'unknown', ...nothing };
    const { person, csrfToken } = (await answer.json()) as OwnSession;
    return { standing: person.id === document.body.dataset['person'] ? 'same' : 'other', csrfToken };
  } catch {
    return { standing: 'unknown', ...nothing };
  }
}

function renewTokens(csrfToken: string): void {
  document.body.dataset['csrf'] = csrfToken;
  for (const field of document.querySelectorAll<HTMLInputElement>('input[type=hidden][name=csrf]')) {
    field.value = csrfToken;
  }
}

/** The way on opens beside the page, or the page anew where it is nobody's any more: that is for the person to press. */
function sayNoLongerLive(standing: 'other' | 'nobody'): void {
  const line = document.createElement('p');
  line.id = lineId;
  line.dataset['standing'] = standing;
  line.className = 'changed';
  line.setAttribute('role', 'alert');
  const link = document.createElement('a');
  const here = location.pathname + location.search;
  if (standing === 'nobody') {
    link.href = `/sign-in?next=${encodeURIComponent(here)}`;
    link.target = '_blank';
    link.rel = 'noopener';
    link.textContent = say('browser-sign-in-beside');
  } else {
    link.href = here;
    link.textContent = say('browser-open-anew');
  }
  line.append(`${say(standing === 'nobody' ? 'browser-signed-out' : 'browser-other-here')} `, link);
  document.getElementById('content')?.prepend(line);
}
