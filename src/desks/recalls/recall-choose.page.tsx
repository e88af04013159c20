import type { VNode } from 'preact';
import type { Refusal } from '../../platform/refusal.js';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { HiddenEntry } from '../../platform/web/kit/entries.js';
import { sayLocally } from '../../platform/web/local-text.js';
import { localOfInstant } from '../../platform/web/local-time.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { findingText, fitsText } from '../finding-text.js';
import { choiceKey, type Finding } from '../finding.js';
import type { RecallOrigin } from './recall-origin-text.js';
import { scopeKey, scopeText, type NamedScope } from './scope-key.js';

/** A line or dryer whose shifts can be chosen. */
export interface ShiftPlace {
  /** As `packing-shift:…` or `dryer-shift:…`. */
  readonly key: string;
  readonly kind: 'packing-shift' | 'dryer-shift';
  readonly name: string;
}

export interface NamedChoice extends NamedScope {
  readonly isTicked: boolean;
}

interface ChooseProps {
  readonly viewer: Viewer;
  readonly code: string;
  /** Things that the code may mean, where there are several. */
  readonly findings: readonly Finding[];
  /** What a recall of the thing may be of; null before anything was asked. */
  readonly choices: readonly NamedChoice[] | null;
  readonly places: readonly ShiftPlace[];
  readonly origin: RecallOrigin | null;
  readonly now: string;
  /** Why what was chosen cannot be recalled. */
  readonly refusal: Refusal | null;
}

/** What is to be recalled: by any code, or by a shift or a time. */
export function recallChoosePage(props: ChooseProps): VNode {
  const { viewer, code, findings, choices, origin, refusal } = props;
  return (
    <Shell title={say('recall-new-title')} viewer={viewer}>
      {refusal === null ? null : (
        <section class="card refusal" role="alert">
          <p>{sayLocally(refusal.code, refusal.facts, viewer.timeZone)}</p>
        </section>
      )}
      {origin === null ? null : (
        <p>
          {say('recall-begins-with')} <a href={origin.href}>{origin.number}</a>
        </p>
      )}
      {choices === null ? null : <Choices {...props} choices={choices} />}
      <form class="card" method="get" action="/quality/recalls/new">
        <label for="code">{say('recall-new-code')}</label>
        <div class="search">
          <input
            id="code"
            name="code"
            type="text"
            value={code}
            maxLength={200}
            autocomplete="off"
            autofocus={choices === null}
          />
          <Act says={say('recall-new-find')} tone={choices === null ? 'asked' : 'plain'} />
        </div>
      </form>
      {findings.length === 0 ? null : <Which code={code} findings={findings} />}
      <ShiftBox {...props} />
    </Shell>
  );
}

function Which({ code, findings }: Pick<ChooseProps, 'code' | 'findings'>): VNode {
  return (
    <section class="card" aria-labelledby="which">
      <h2 id="which">{say('search-which', { code })}</h2>
      <ul class="choices">
        {findings.map((finding) => {
          const key = choiceKey(finding);
          const href = `/quality/recalls/new?code=${encodeURIComponent(code)}&meant=${encodeURIComponent(key)}`;
          return (
            <li key={key}>
              <a href={href}>{findingText(finding)}</a> <span class="quiet">{finding.about}</span>
              <br />
              <small>{fitsText(finding.fits)}</small>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** The usual ticked; wider and narrower beside it. */
function Choices({
  viewer,
  choices,
  origin,
}: Pick<ChooseProps, 'viewer' | 'origin'> & { readonly choices: readonly NamedChoice[] }): VNode {
  if (choices.length === 0) {
    return (
      <section class="card refusal" role="alert">
        <p>{say('recall-new-nothing')}</p>
      </section>
    );
  }
  return (
    <form class="card" id="scope-form" method="get" action="/quality/recalls/new">
      <fieldset class="ticks">
        <legend>{say('recall-new-which')}</legend>
        {choices.map((choice) => (
          <label key={scopeKey(choice)} class="tick">
            <input type="checkbox" name="scopes" value={scopeKey(choice)} checked={choice.isTicked} />
            <span>{scopeText(choice, viewer.timeZone)}</span>
          </label>
        ))}
      </fieldset>
      <p class="quiet">{say('recall-new-which-hint')}</p>
      {origin === null ? null : <HiddenEntry name={origin.kind} value={origin.id} />}
      <HiddenEntry name="look" value="yes" />
      <Act says={say('recall-new-look')} />
    </form>
  );
}

function ShiftBox({ viewer, places, origin, now }: ChooseProps): VNode {
  return (
    <details class="card">
      <summary>{say('recall-new-shift')}</summary>
      <form class="entry" method="get" action="/quality/recalls/new">
        <p>{say('recall-new-shift-hint')}</p>
        <div class="field">
          <label for="place">{say('recall-new-place')}</label>
          <select id="place" name="place" required>
            {places.map(({ key, kind, name }) => (
              <option key={key} value={key}>
                {say(`recall-of-${kind}`, { name })}
              </option>
            ))}
          </select>
        </div>
        <div class="field">
          <label for="from">{say('recall-new-from')}</label>
          <input id="from" name="fromAt" type="datetime-local" value={localOfInstant(now, viewer.timeZone)} required />
        </div>
        <div class="field">
          <label for="until">
            {say('recall-new-until')}
            <span class="hint">{say('recall-new-until-hint')}</span>
          </label>
          <input id="until" name="untilAt" type="datetime-local" />
        </div>
        {origin === null ? null : <HiddenEntry name={origin.kind} value={origin.id} />}
        <HiddenEntry name="look" value="yes" />
        <Act says={say('recall-new-look')} tone="plain" />
      </form>
    </details>
  );
}
