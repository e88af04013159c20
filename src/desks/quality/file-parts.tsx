import type { VNode } from 'preact';
import type { DecisionLine } from '../../disposition/decisions.js';
import type { ChangeLine } from '../../disposition/changes-to-look-at.js';
import { actionText } from '../../journal/entry-text.js';
import type { SentenceFacts } from '../../platform/refusal.js';
import { say } from '../../platform/sentences/sentences.js';
import { localText, sayLocally } from '../../platform/web/local-text.js';

/** Something that is missing or speaks against a release: a sentence, and where to look. */
export interface Lack {
  readonly code: string;
  readonly facts: SentenceFacts;
  readonly href: string | null;
  /** It stops a release; else it is worth knowing. */
  readonly isGrave: boolean;
}

const shownAtOnce = 12;

/** What is missing before a decision, as sentences; the gravest first. */
export function Lacks({ lacks, timeZone }: { readonly lacks: readonly Lack[]; readonly timeZone: string }): VNode {
  const sorted = [...lacks].sort((one, other) => Number(other.isGrave) - Number(one.isGrave));
  const [first, rest] = [sorted.slice(0, shownAtOnce), sorted.slice(shownAtOnce)];
  return (
    <section class="card" aria-labelledby="lacks">
      <h2 id="lacks">{say('file-lacks')}</h2>
      {lacks.length === 0 ? <p class="sentence">{say('file-lacks-nothing')}</p> : null}
      <LackList lacks={first} timeZone={timeZone} />
      {rest.length === 0 ? null : (
        <details>
          <summary>{say('file-lacks-more', { count: rest.length })}</summary>
          <LackList lacks={rest} timeZone={timeZone} />
        </details>
      )}
    </section>
  );
}

function LackList({ lacks, timeZone }: { readonly lacks: readonly Lack[]; readonly timeZone: string }): VNode {
  return (
    <ul class="lacks">
      {lacks.map(({ code, facts, href, isGrave }, place) => (
        <li key={place} class={isGrave ? 'grave' : undefined}>
          {sayLocally(code, facts, timeZone)} {href === null ? null : <a href={href}>{say('file-look')}</a>}
        </li>
      ))}
    </ul>
  );
}

/** Decisions as they were taken, the latest first. */
export function Decided({
  decisions,
  timeZone,
}: {
  readonly decisions: readonly DecisionLine[];
  readonly timeZone: string;
}): VNode {
  return (
    <section>
      <h2>{say('bag-decisions')}</h2>
      {decisions.length === 0 ? <p>{say('bag-undecided')}</p> : null}
      <ul>
        {decisions.map(({ id, verdict, reason, decidedAt }) => (
          <li key={id}>
            {localText(decidedAt, timeZone)}: {say(`state-${verdict}`)}
            {reason === null ? '' : ` (${reason})`}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Late entries and corrections as lacks: worth knowing before a decision, whoever made them. */
export function lacksOfChanges(changes: readonly ChangeLine[]): readonly Lack[] {
  return changes.map((change) => ({
    code: change.isCorrection ? 'lack-correction' : 'lack-late',
    facts: {
      action: actionText(change.action),
      at: change.recordedAt,
      minutes: change.lateMinutes,
      reason: change.reason ?? say('lack-no-reason'),
    },
    href: `/quality/changes#entry-${change.sequence}`,
    isGrave: false,
  }));
}
