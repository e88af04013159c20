import type { VNode } from 'preact';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import { Act, ActLink } from '../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry, TimeEntry } from '../platform/web/kit/entries.js';
import { EntryForm } from '../platform/web/kit/entry-form.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { modelKinds } from './flow-model.form.js';
import { fitText, modelText } from './flow-text.js';
import type { FlowView } from './flow-view.js';
import { WithdrawBox } from './withdraw-box.js';

/** Which of the page's forms was sent last, and what was wrong with it: `choose`, or the id of what was withdrawn. */
export interface FlowTrouble {
  readonly of: string;
  readonly form: FormTrouble;
}

interface FlowProps {
  readonly viewer: Viewer;
  readonly view: FlowView;
  readonly names: ReadonlyMap<string, string>;
  readonly trouble: FlowTrouble | null;
}

/** How one hopper is taken to flow: the model in force, those before it, and the trials that they rest on. */
export function flowPage({ viewer, view, names, trouble }: FlowProps): VNode {
  const { hopper, models } = view;
  const [now = null] = models;
  const mayKeep = mayDo(viewer.actor.roles, 'keep-flow-models');
  return (
    <Shell title={say('flow-title', { hopper: hopper.code })} viewer={viewer} use="desk">
      <p class="sentence">
        {say(now === null ? 'flow-nobody-chose' : 'flow-in-force', {
          model: modelText(now),
          trial: now?.trialNumber ?? null,
          since: now === null ? null : localText(now.validFrom, viewer.timeZone),
        })}
      </p>
      <p>{say('flow-moves-likely-only')}</p>
      <p class="quiet">{say('flow-by-period')}</p>
      <ModelTable viewer={viewer} view={view} names={names} />
      <TrialTable viewer={viewer} view={view} names={names} />
      <div class="acts">
        {mayKeep ? <ActLink href={`/hoppers/${hopper.id}/trials/new`} says={say('trial-enter')} /> : null}
        <ActLink href={`/hoppers/${hopper.id}`} says={`${hopper.code} · ${hopper.name}`} />
      </div>
      {mayKeep ? <ChooseBox viewer={viewer} view={view} trouble={formTroubleOf(trouble, 'choose')} /> : null}
      {mayKeep && now !== null ? (
        <WithdrawBox
          viewer={viewer}
          action={`/flow-models/${now.id}/withdrawal`}
          says={say('flow-withdraw', { model: modelText(now) })}
          trouble={formTroubleOf(trouble, now.id)}
        />
      ) : null}
    </Shell>
  );
}

function formTroubleOf(trouble: FlowTrouble | null, of: string): FormTrouble | null {
  return trouble?.of === of ? trouble.form : null;
}

type TableProps = Omit<FlowProps, 'trouble'>;

function ModelTable({ viewer, view, names }: TableProps): VNode {
  return (
    <Table
      caption={say('flow-models', { count: view.models.length })}
      empty={say('flow-no-models')}
      columns={['flow-since', 'flow-model', 'flow-on-trial', 'flow-by', 'flow-why'].map((code) => ({
        head: say(code),
      }))}
      rows={view.models.map((model) => ({
        key: model.id,
        cells: [
          localText(model.validFrom, viewer.timeZone),
          modelText(model),
          model.trialId === null ? (
            '–'
          ) : (
            <a key="trial" href={`/tracer-trials/${model.trialId}`}>
              {say('trial-name', { number: model.trialNumber })}
            </a>
          ),
          names.get(model.personId ?? '') ?? '–',
          model.reason ?? '–',
        ],
      }))}
    />
  );
}

function TrialTable({ viewer, view, names }: TableProps): VNode {
  return (
    <Table
      caption={say('trials-caption', { count: view.trials.length })}
      empty={say('trials-none')}
      columns={['trial', 'trial-made', 'trial-bags', 'trial-samples', 'trial-says', 'flow-by'].map((code) => {
        return { head: say(code) };
      })}
      rows={view.trials.map(({ trial, samples, fit }) => ({
        key: trial.id,
        cells: [
          <a key="trial" href={`/tracer-trials/${trial.id}`}>
            {say('trial-name', { number: trial.number })}
          </a>,
          localText(trial.madeAt, viewer.timeZone),
          say('trial-two-bags', { before: trial.beforeBagNumber, after: trial.afterBagNumber }),
          samples.length,
          fitText(fit),
          names.get(trial.personId ?? '') ?? '–',
        ],
      }))}
    />
  );
}

interface ChooseProps extends Pick<FlowProps, 'viewer' | 'view'> {
  readonly trouble: FormTrouble | null;
}

function ChooseBox({ viewer, view, trouble }: ChooseProps): VNode {
  const usable = view.trials.filter(({ fit }) => fit.ok);
  return (
    <details class="card" open={trouble !== null}>
      <summary>{say('flow-choose')}</summary>
      <EntryForm viewer={viewer} id="choose" action={`/hoppers/${view.hopper.id}/flow`} trouble={trouble}>
        <ChoiceEntry
          name="kind"
          label={say('flow-model')}
          as="tiles"
          required
          choices={modelKinds.map((kind) => ({
            value: kind,
            says: say(`flow-${kind}`),
            about: say(`flow-${kind}-about`),
          }))}
          trouble={trouble}
        />
        <ChoiceEntry
          name="trialId"
          label={say('flow-on-trial')}
          hint={say(usable.length === 0 ? 'flow-trial-first' : 'flow-trial-hint')}
          choices={usable.map(({ trial, fit }) => ({
            ...{ value: trial.id, says: say('trial-name', { number: trial.number }), about: fitText(fit) },
          }))}
          trouble={trouble}
        />
        <TimeEntry
          name="validFrom"
          label={say('flow-since')}
          hint={say('flow-since-hint')}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <TextEntry
          name="reason"
          label={say('flow-why')}
          hint={say('flow-why-hint')}
          maxLength={300}
          trouble={trouble}
        />
        <Act says={say('flow-choose-act')} />
      </EntryForm>
    </details>
  );
}
