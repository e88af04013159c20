import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark } from '../platform/web/state-mark.js';
import { classText, scopeText } from './holds.page.js';
import type { HoldLine } from './holds.js';

interface HoldProps {
  readonly viewer: Viewer;
  readonly hold: HoldLine;
  /** What the thread of its subject is asked by: a bag's number, else the subject's id. */
  readonly subjectCode: string;
}

/** One hold: what it covers, why, its class, and how it ended. */
export function holdPage({ viewer, hold, subjectCode }: HoldProps): VNode {
  const at = (instant: string): string => localText(instant, viewer.timeZone);
  return (
    <Shell title={say('hold-title', { hold: hold.number })} viewer={viewer}>
      <p>{hold.liftedAt === null ? <StateMark state="on-hold" /> : say('hold-lifted')}</p>
      {hold.liftedAt === null ? <p class="caution">{say('caution-hold')}</p> : null}
      <dl>
        <dt>{say('holds-column-scope')}</dt>
        <dd>
          {scopeText(hold)}: <a href={`/thread?code=${encodeURIComponent(subjectCode)}`}>{subjectCode}</a>
        </dd>
        <dt>{say('holds-column-placed')}</dt>
        <dd>{at(hold.placedAt)}</dd>
        <dt>{say('holds-column-reason')}</dt>
        <dd>{hold.reason}</dd>
        <dt>{say('holds-column-class')}</dt>
        <dd>{hold.classReason === null ? classText(hold) : `${classText(hold)}: ${hold.classReason}`}</dd>
        {hold.liftedAt === null ? null : (
          <>
            <dt>{say('hold-lifted-at')}</dt>
            <dd>{`${at(hold.liftedAt)}: ${hold.liftReason ?? ''}`}</dd>
          </>
        )}
      </dl>
    </Shell>
  );
}
