import type { VNode } from 'preact';
import type { DueCheck } from '../../line-checks/due-checks.js';
import type { LineCheckRow } from '../../line-checks/line-checks.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import type { NamedRow } from '../../plant/plant-rows.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Live } from '../../platform/web/kit/live.js';
import { clockText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { dueText, oftenText } from './check-text.js';
import { CheckTable } from './check-table.js';

interface LineChecksProps {
  readonly viewer: Viewer;
  readonly line: NamedRow;
  readonly run: RunRow | null;
  readonly due: readonly DueCheck[];
  readonly done: readonly LineCheckRow[];
  /** Who made each check, by its id. */
  readonly by: ReadonlyMap<string, string>;
}

/** What the journal tells of that changes what is due. */
const followed = ['check-line', 'correct-line-check', 'look-at-line-checks', 'start-run', 'close-run', 'change-code'];

/** The checks of a line: what is due, when the next is, and what was checked this shift. */
export function lineChecksPage({ viewer, line, run, due, done, by }: LineChecksProps): VNode {
  const running = run === null ? say('checks-no-run') : `${run.formatName} · ${run.number}`;
  return (
    <Shell title={say('checks-title', { line: line.name })} viewer={viewer} use="tablet">
      <p class="sentence">{running}</p>
      <Live id="due-checks" about={[...followed, 'fit-film', 'add-check-plan', 'change-check-plan', 'end-check-plan']}>
        {due.length === 0 ? <NoPlans viewer={viewer} /> : <DueList line={line} due={due} timeZone={viewer.timeZone} />}
        <CheckTable
          caption={say('checks-this-shift')}
          checks={done}
          by={by}
          timeZone={viewer.timeZone}
          empty={say('checks-none-this-shift')}
        />
      </Live>
      <div class="acts">
        <ActLink href={`/line/${line.id}`} says={say('checks-to-line', { line: line.name })} />
        <ActLink href={`/checks?lineId=${line.id}`} says={say('checks-to-log')} />
      </div>
    </Shell>
  );
}

function NoPlans({ viewer }: { readonly viewer: Viewer }): VNode {
  return (
    <section class="card">
      <p>{say('checks-no-plans')}</p>
      {mayDo(viewer.actor.roles, 'plan-checks') ? <ActLink href="/set-up/checks" says={say('plans-title')} /> : null}
    </section>
  );
}

interface DueListProps {
  readonly line: NamedRow;
  readonly due: readonly DueCheck[];
  readonly timeZone: string;
}

function DueList({ line, due, timeZone }: DueListProps): VNode {
  return (
    <ul class="due-checks">
      {due.map((one) => (
        <li key={one.plan.planId} class={one.word}>
          <p>
            <strong>{one.plan.station}</strong> <small>{say(`check-kind-${one.plan.kind}`)}</small>
            <br />
            <small>
              {oftenText(one.plan)}
              {one.last === null
                ? ''
                : ` · ${say(one.last.passed ? 'last-passed' : 'last-failed', { at: clockText(one.last.occurredAt, timeZone) })}`}
            </small>
          </p>
          <p class="when">{dueText(one)}</p>
          <ActLink
            href={`/line/${line.id}/checks/${one.plan.planId}`}
            says={say(one.word === 'failed' ? 'check-again' : 'check-now')}
            tone={['failed', 'overdue', 'due'].includes(one.word) ? 'asked' : 'plain'}
          />
        </li>
      ))}
    </ul>
  );
}
