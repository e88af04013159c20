import type { ComponentChildren, VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import {
  countAt,
  missingAt,
  stepAfter,
  stepBefore,
  steps,
  type Missing,
  type SetUpState,
  type Step,
} from './set-up-state.js';

interface SetUpProps {
  readonly viewer: Viewer;
  readonly state: SetUpState;
}

/** The way from an empty system to the first bag: what is there, what is missing, where to go on. */
export function setUpPage({ viewer, state }: SetUpProps): VNode {
  const open = steps.filter((step) => missingAt(step, state).length > 0);
  const [first] = open;
  const maySetUp = mayDo(viewer.actor.roles, 'set-up-plant');
  return (
    <Shell title={say('set-up-title')} viewer={viewer}>
      <p class="sentence">
        {first === undefined ? say('set-up-all-there') : say('set-up-missing', { count: open.length })}
      </p>
      {first === undefined || !maySetUp ? null : (
        <p class="acts">
          <ActLink href={`/set-up/${first}`} says={say('set-up-go-to', { step: say(`step-${first}`) })} tone="asked" />
        </p>
      )}
      <ol class="set-up-steps">
        {steps.map((step) => (
          <li key={step}>
            <a href={`/set-up/${step}`}>{say(`step-${step}`)}</a>
            <Standing step={step} state={state} />
          </li>
        ))}
        {mayDo(viewer.actor.roles, 'plan-checks') ? (
          <li>
            <a href="/set-up/checks">{say('step-checks')}</a> <span class="quiet">{say('step-checks-says')}</span>
          </li>
        ) : null}
        {mayDo(viewer.actor.roles, 'plan-checks') ? (
          <li>
            <a href="/set-up/weighing">{say('step-weighing')}</a> <span class="quiet">{say('step-weighing-says')}</span>
          </li>
        ) : null}
        <li>
          <a href="/set-up/sales">{say('step-sales')}</a> <span class="quiet">{say('step-sales-says')}</span>
        </li>
        <li>
          <a href="/set-up/pack-weighers">{say('step-pack-weighers')}</a>{' '}
          <span class="quiet">{say('step-pack-weighers-says')}</span>
        </li>
      </ol>
      <p class="quiet">{say('set-up-later')}</p>
      <p class="caution">{say('set-up-caution')}</p>
    </Shell>
  );
}

function Standing({ step, state }: { readonly step: Step; readonly state: SetUpState }): VNode {
  const missing = missingAt(step, state);
  const count = countAt(step, state);
  if (missing.length === 0) {
    return <span class="quiet"> {count === null ? say('set-up-there') : say('set-up-there-count', { count })}</span>;
  }
  return (
    <ul>
      {missing.map((one) => (
        <li key={missingText(one)}>{missingText(one)}</li>
      ))}
    </ul>
  );
}

function missingText({ code, facts = {} }: Missing): string {
  const role = facts['role'];
  return say(code, role === undefined ? facts : { ...facts, role: say(`role-${role}`) });
}

interface StepProps extends SetUpProps {
  readonly step: Step;
  readonly children: ComponentChildren;
}

/** One step: what it is for, what is there, its form, and the ways back and on. */
export function stepPage({ viewer, state, step, children }: StepProps): VNode {
  const before = stepBefore(step);
  const after = stepAfter(step);
  const missing = missingAt(step, state);
  return (
    <Shell
      title={say('set-up-step', { place: steps.indexOf(step) + 1, of: steps.length, step: say(`step-${step}`) })}
      viewer={viewer}
    >
      <p>{say(`step-${step}-says`)}</p>
      {missing.length === 0 ? null : (
        <ul class="missing">
          {missing.map((one) => (
            <li key={missingText(one)}>{missingText(one)}</li>
          ))}
        </ul>
      )}
      {children}
      <p class="acts">
        {before === null ? null : (
          <ActLink href={`/set-up/${before}`} says={say('set-up-back', { step: say(`step-${before}`) })} />
        )}
        <ActLink
          href={after === null ? '/set-up' : `/set-up/${after}`}
          says={after === null ? say('set-up-to-list') : say('set-up-go-on', { step: say(`step-${after}`) })}
          tone={missing.length === 0 ? 'asked' : 'plain'}
        />
        {after === null ? null : <ActLink href="/set-up" says={say('set-up-to-list')} />}
      </p>
    </Shell>
  );
}
