import type { VNode } from 'preact';
import { mostLots } from '../packing/packing-runs.js';
import { say } from '../platform/sentences/sentences.js';
import type { Viewer } from '../platform/web/request.js';
import { ActLink } from '../platform/web/kit/act.js';
import { Shell } from '../platform/web/shell.js';
import { desks, waysOf } from '../platform/web/ways.js';
import type { Findings } from './find-subjects.js';
import { findingText, fitsText } from './finding-text.js';
import { choiceKey, type ComplaintFinding, type Finding, type RecallFinding } from './finding.js';

interface SearchPageProps {
  readonly viewer: Viewer;
  readonly code: string;
  /** What the code may mean; null before anything was asked. */
  readonly choices: Findings | null;
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

function Choices({ code, choices }: { readonly code: string; readonly choices: Findings }): VNode {
  const { findings, complaints, recalls, fault } = choices;
  if (findings.length + complaints.length + recalls.length === 0) {
    return (
      <section class="card refusal" role="alert">
        <p>{fault === null ? say('code-not-found', { code }) : say(fault.code, fault.facts)}</p>
      </section>
    );
  }
  return (
    <section class="card" aria-labelledby="which">
      <h2 id="which">{say('search-which', { code })}</h2>
      <ul>
        {findings.map((finding) => (
          <Choice key={choiceKey(finding)} code={code} finding={finding} />
        ))}
        {complaints.map((one) => (
          <ComplaintChoice key={one.complaint.id} of={one} />
        ))}
        {recalls.map((one) => (
          <RecallChoice key={one.recall.id} of={one} />
        ))}
      </ul>
      {findings.length < mostLots ? null : <p class="quiet">{say('search-more', { count: mostLots })}</p>}
    </section>
  );
}

/** A thing that the code may mean, and why. */
function Choice({ code, finding }: { readonly code: string; readonly finding: Finding }): VNode {
  const meant = encodeURIComponent(choiceKey(finding));
  return (
    <li>
      <a href={`/thread?code=${encodeURIComponent(code)}&meant=${meant}${timeOf(finding)}`}>{findingText(finding)}</a>{' '}
      <span class="quiet">{finding.about}</span>
      <br />
      <small>{fitsText(finding.fits)}</small>
    </li>
  );
}

function ComplaintChoice({ of: { complaint, fits } }: { readonly of: ComplaintFinding }): VNode {
  return (
    <li>
      <a href={`/quality/complaints/${complaint.id}`}>{say('complaint-named', { complaint: complaint.number })}</a>{' '}
      <span class="quiet">{say(`complaint-about-${complaint.category}`)}</span>
      <br />
      <small>{fitsText(fits)}</small>
    </li>
  );
}

function RecallChoice({ of: { recall, fits } }: { readonly of: RecallFinding }): VNode {
  return (
    <li>
      <a href={`/quality/recalls/${recall.id}`}>{say(`recall-named-${recall.kind}`, { recall: recall.number })}</a>
      <br />
      <small>{fitsText(fits)}</small>
    </li>
  );
}

function timeOf({ subject }: Finding): string {
  return subject.localTime === null ? '' : `&at=${encodeURIComponent(subject.localTime)}`;
}
