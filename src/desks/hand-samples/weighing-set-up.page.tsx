import type { VNode } from 'preact';
import type { HandPlanRow } from '../../fill-weight/hand-plan/hand-plans.js';
import type { WatchedWeigher } from '../../fill-weight/silence/silence-settings.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

/** Which of the forms of the page. */
export type WeighingForm = 'plan' | 'end' | 'silence';

interface Named {
  readonly id: string;
  readonly name: string;
}

interface WeighingSetUpProps {
  readonly viewer: Viewer;
  readonly plans: readonly HandPlanRow[];
  readonly weighers: readonly WatchedWeigher[];
  readonly lines: readonly Named[];
  readonly formats: readonly Named[];
  /** Whose trouble it is. */
  readonly of: WeighingForm | null;
  readonly trouble: FormTrouble | null;
}

/** How often packs are weighed by hand, and how long a pack weigher may send nothing. */
export function weighingSetUpPage(props: WeighingSetUpProps): VNode {
  const { viewer, plans, weighers } = props;
  return (
    <Shell title={say('weighing-plan-title')} viewer={viewer}>
      <p class="quiet">{say('weighing-plan-says')}</p>
      <Plans plans={plans} />
      <NewPlan {...props} />
      {plans.length === 0 ? null : <EndPlan {...props} />}
      <Weighers weighers={weighers} />
      {weighers.length === 0 ? null : <SetSilence {...props} />}
      <div class="acts">
        <ActLink href="/set-up" says={say('set-up-to-list')} />
      </div>
    </Shell>
  );
}

function planName({ lineName, formatName }: HandPlanRow): string {
  return `${lineName} · ${formatName ?? say('weighing-plan-all-formats')}`;
}

function Plans({ plans }: Pick<WeighingSetUpProps, 'plans'>): VNode {
  return (
    <Table
      caption={say('weighing-plan-plans')}
      columns={[
        { head: say('weighing-plan-line') },
        { head: say('weighing-plan-every'), align: 'number' },
        { head: say('hand-sample-packs'), align: 'number' },
        { head: say('weighing-plan-grace'), align: 'number' },
      ]}
      rows={plans.map((plan) => ({
        key: plan.id,
        cells: [planName(plan), countText(plan.everyMinutes), countText(plan.packCount), countText(plan.graceMinutes)],
      }))}
      empty={say('weighing-plan-no-plans')}
    />
  );
}

function NewPlan({ viewer, lines, formats, of, trouble }: WeighingSetUpProps): VNode {
  const own = of === 'plan' ? trouble : null;
  return (
    <section class="card" aria-labelledby="new-plan">
      <h2 id="new-plan">{say('weighing-plan-new-plan')}</h2>
      <EntryForm viewer={viewer} action="/set-up/weighing/plan" trouble={own} id="plan-form">
        <ChoiceEntry
          name="lineId"
          label={say('weighing-plan-which-line')}
          required
          trouble={own}
          choices={choices(lines)}
        />
        <ChoiceEntry
          name="formatId"
          label={say('weighing-plan-which-format')}
          hint={say('weighing-plan-format-hint')}
          trouble={own}
          choices={choices(formats)}
        />
        <NumberEntry
          name="everyMinutes"
          label={say('weighing-plan-every')}
          unit="min"
          required
          value="30"
          trouble={own}
        />
        <NumberEntry name="packCount" label={say('hand-sample-packs')} required value="5" trouble={own} />
        <NumberEntry
          name="graceMinutes"
          label={say('weighing-plan-grace')}
          unit="min"
          required
          value="10"
          trouble={own}
        />
        <Act says={say('weighing-plan-set')} />
      </EntryForm>
    </section>
  );
}

function choices(of: readonly Named[]): { value: string; says: string }[] {
  return of.map(({ id, name }) => ({ value: id, says: name }));
}

function EndPlan({ viewer, plans, of, trouble }: WeighingSetUpProps): VNode {
  const own = of === 'end' ? trouble : null;
  return (
    <section class="card" aria-labelledby="end-plan">
      <h2 id="end-plan">{say('weighing-plan-end-plan')}</h2>
      <EntryForm viewer={viewer} action="/set-up/weighing/end" trouble={own} id="end-form">
        <ChoiceEntry
          name="plan"
          label={say('weighing-plan-which-plan')}
          required
          trouble={own}
          choices={plans.map((plan) => ({
            value: plan.formatId === null ? plan.lineId : `${plan.lineId}/${plan.formatId}`,
            says: planName(plan),
          }))}
        />
        <TextEntry name="reason" label={say('weighing-plan-why-end')} required maxLength={300} trouble={own} />
        <Act says={say('weighing-plan-end')} tone="careful" />
      </EntryForm>
    </section>
  );
}

function Weighers({ weighers }: Pick<WeighingSetUpProps, 'weighers'>): VNode {
  return (
    <Table
      caption={say('weighing-plan-weighers')}
      columns={[
        { head: say('silence-weigher'), align: 'code' },
        { head: say('weighing-plan-line') },
        { head: say('weighing-plan-silent-after') },
      ]}
      rows={weighers.map((weigher) => ({
        key: weigher.id,
        cells: [
          weigher.code,
          weigher.lineCode,
          weigher.silentAfterMinutes === null
            ? say('weighing-plan-not-waited-for')
            : say('weighing-plan-minutes', { minutes: countText(weigher.silentAfterMinutes) }),
        ],
      }))}
      empty={say('weighing-plan-no-weighers')}
    />
  );
}

function SetSilence({ viewer, weighers, of, trouble }: WeighingSetUpProps): VNode {
  const own = of === 'silence' ? trouble : null;
  return (
    <section class="card" aria-labelledby="set-silence">
      <h2 id="set-silence">{say('weighing-plan-set-silence')}</h2>
      <EntryForm viewer={viewer} action="/set-up/weighing/silence" trouble={own} id="silence-form">
        <ChoiceEntry
          name="weigherId"
          label={say('silence-weigher')}
          required
          trouble={own}
          choices={weighers.map(({ id, code, lineCode }) => ({ value: id, says: `${code} · ${lineCode}` }))}
        />
        <NumberEntry
          name="silentAfterMinutes"
          label={say('weighing-plan-silent-after')}
          hint={say('weighing-plan-silent-hint')}
          unit="min"
          trouble={own}
        />
        <Act says={say('weighing-plan-set')} />
      </EntryForm>
    </section>
  );
}
