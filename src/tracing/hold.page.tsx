import type { VNode } from 'preact';
import type { HoldLine } from '../disposition/holds.js';
import { say } from '../platform/sentences/sentences.js';
import { Figures } from '../platform/web/kit/figures.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark } from '../platform/web/state-mark.js';
import { classText, Held } from './holds.page.js';

interface HoldProps {
  readonly viewer: Viewer;
  readonly hold: HoldLine;
  /** What it is on, as people know it. */
  readonly name: string | null;
}

/** One hold: what it covers, why, its class, and how it ended. */
export function holdPage({ viewer, hold, name }: HoldProps): VNode {
  const at = (instant: string): string => localText(instant, viewer.timeZone);
  return (
    <Shell title={say('hold-title', { hold: hold.number })} viewer={viewer}>
      <p>{hold.liftedAt === null ? <StateMark state="on-hold" /> : say('hold-lifted')}</p>
      {hold.liftedAt === null ? <p class="caution">{say('caution-hold')}</p> : null}
      <Figures
        of={[
          {
            label: say('holds-column-scope'),
            value: <Held viewer={viewer} hold={hold} name={name} />,
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
