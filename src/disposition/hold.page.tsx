import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Figures } from '../platform/web/kit/figures.js';
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
      <Figures
        of={[
          {
            label: say('holds-column-scope'),
            value: <Cover viewer={viewer} hold={hold} subjectCode={subjectCode} />,
          },
          { label: say('holds-column-placed'), value: at(hold.placedAt) },
          { label: say('holds-column-reason'), value: hold.reason },
          {
            label: say('holds-column-class'),
            value: hold.classReason === null ? classText(hold) : `${classText(hold)}: ${hold.classReason}`,
          },
          ...(hold.liftedAt === null
            ? []
            : [{ label: say('hold-lifted-at'), value: `${at(hold.liftedAt)}: ${hold.liftReason ?? ''}` }]),
        ]}
      />
    </Shell>
  );
}

/** What is covered, by its number where it has one that people read. A shift has no thread of its own. */
function Cover({ viewer, hold, subjectCode }: HoldProps): VNode {
  const text = scopeText(hold, viewer.timeZone);
  const says = subjectCode === hold.scopeId ? text : `${text} ${subjectCode}`;
  if (hold.scopeKind === 'dryer-shift' || hold.scopeKind === 'packing-shift') return <span>{says}</span>;
  return <a href={`/thread?code=${encodeURIComponent(subjectCode)}`}>{says}</a>;
}
