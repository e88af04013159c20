import type { VNode } from 'preact';
import { spacedBagNumber } from '../../core/identifiers/bag-number.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText, kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Figures } from '../../platform/web/kit/figures.js';
import { Table } from '../../platform/web/kit/table.js';
import { clockText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { NamedRow } from '../../plant/plant-rows.js';
import type { DryerDesk, FilledBag } from './dryer-desk.js';
import { BagInHand, NextBag } from './bag-forms.js';

export interface DryerProps {
  readonly viewer: Viewer;
  readonly desk: DryerDesk;
  readonly grades: readonly NamedRow[];
  /** The label that was given out just now. */
  readonly paperId?: string | null;
  /** Which of the page's forms was refused, and why. */
  readonly trouble?: { readonly of: 'run' | 'bag' | 'close' | 'sample'; readonly why: FormTrouble } | null | undefined;
}

/** One dryer: which bag hangs there, what it weighs, and what was filled in this shift. */
export function dryerPage(props: DryerProps): VNode {
  const { viewer, desk, paperId } = props;
  const mayFill = mayDo(viewer.actor.roles, 'fill-bags');
  const [bag, ...others] = desk.hanging;
  const isIdle = bag === undefined && desk.run === null;
  return (
    <Shell title={say('dryer-title', { dryer: desk.dryer.name })} viewer={viewer} use="tablet">
      <p class="sentence">{runSentence(props)}</p>
      {paperId === undefined || paperId === null ? null : (
        <p class="acts">
          <ActLink href={`/papers/${paperId}/file`} says={say('dryer-open-label')} />
        </p>
      )}
      {bag === undefined ? null : <BagInHand {...props} bag={bag} mayFill={mayFill} />}
      {bag === undefined && desk.run !== null && mayFill ? <NextBag {...props} run={desk.run} /> : null}
      {others.length === 0 ? null : <Unclosed {...props} />}
      {mayFill && isIdle ? <RunForms {...props} /> : null}
      <ThisShift {...props} />
      <LastBags {...props} />
      {mayFill && !isIdle ? <RunForms {...props} /> : null}
      <p class="acts">
        <ActLink href="/dryer/moves" says={say('dryer-to-moves')} />
        <ActLink href="/dryer/receipts" says={say('dryer-to-receipts')} />
        <ActLink href="/dryer/scales" says={say('dryer-to-scales')} />
        <ActLink href="/dryer" says={say('dryer-to-all')} />
      </p>
      <p class="caution">{say('dryer-caution')}</p>
      <p class="quiet">{say('dryer-needs-network')}</p>
    </Shell>
  );
}

function runSentence({ viewer, desk }: DryerProps): string {
  if (desk.run === null) return say('dryer-no-run');
  const { gradeName, number, startedAt } = desk.run;
  return say('dryer-in-run', { grade: gradeName, run: number, at: clockText(startedAt, viewer.timeZone) });
}

/** Bags that nobody closed: each is named, so that it can be looked for. */
function Unclosed({ viewer, desk }: DryerProps): VNode {
  return (
    <section class="card refusal" role="note">
      <p>{say('dryer-unclosed', { count: desk.hanging.length - 1 })}</p>
      <ul>
        {desk.hanging.slice(1).map((bag) => (
          <li key={bag.id}>
            <a href={`/dryer/${desk.dryer.id}?bag=${bag.id}`}>{spacedBagNumber(bag.number)}</a>{' '}
            {say('dryer-hangs-since', { at: clockText(bag.fillStartedAt, viewer.timeZone), run: bag.runNumber })}
          </li>
        ))}
      </ul>
    </section>
  );
}

function ThisShift({ viewer, desk, trouble }: DryerProps): VNode {
  const { count, netGrams } = desk.shiftBags;
  const mayTake = mayDo(viewer.actor.roles, 'take-samples');
  const last = desk.unsampled.at(-1);
  return (
    <section>
      <Figures
        of={[
          { label: say('dryer-bags-this-shift'), value: countText(count) },
          { label: say('dryer-net-this-shift'), value: kilogramsText(netGrams), unit: 'kg' },
        ]}
      />
      {desk.shift === null ? <p class="quiet">{say('dryer-no-shifts')}</p> : null}
      {last === undefined ? null : (
        <div class="dryer-sample">
          <p>{say('dryer-sample-due', { count: desk.unsampled.length, bag: spacedBagNumber(last) })}</p>
          {mayTake ? (
            <EntryForm
              viewer={viewer}
              action={`/dryer/${desk.dryer.id}/samples`}
              trouble={trouble?.of === 'sample' ? trouble.why : null}
            >
              <HiddenEntry name="bag" value={last} />
              <Act says={say('dryer-sample-taken', { bag: spacedBagNumber(last) })} tone="plain" />
            </EntryForm>
          ) : null}
        </div>
      )}
    </section>
  );
}

function LastBags({ viewer, desk }: DryerProps): VNode {
  return (
    <Table
      caption={say('dryer-last-bags')}
      columns={[
        { head: say('dryer-bag') },
        { head: say('dryer-net'), align: 'number' },
        { head: say('dryer-closed-at') },
        { head: say('dryer-then') },
      ]}
      rows={desk.lastBags.map((bag) => ({
        key: bag.id,
        cells: [
          <a href={`/bags/${bag.id}`}>{spacedBagNumber(bag.number)}</a>,
          `${kilogramsText(bag.netGrams)} kg`,
          clockText(bag.filledAt, viewer.timeZone),
          mayCorrect(viewer, bag) ? (
            <a href={`/dryer/weighings/${bag.weighingId}`}>{say('dryer-correct')}</a>
          ) : (
            say(`bag-status-${bag.status}`)
          ),
        ],
      }))}
      empty={say('dryer-no-bags')}
    />
  );
}

/** One's own last weighing, while the bag is whole and here. */
export function mayCorrect(viewer: Viewer, bag: Pick<FilledBag, 'personId' | 'status'>): boolean {
  const isOwn = bag.personId !== null && bag.personId === viewer.actor.personId;
  return isOwn && bag.status === 'full' && mayDo(viewer.actor.roles, 'correct');
}

function RunForms({ viewer, desk, grades, trouble }: DryerProps): VNode {
  const why = trouble?.of === 'run' ? trouble.why : null;
  if (desk.run !== null) {
    return (
      <details open={why !== null}>
        <summary>{say('dryer-end-run', { run: desk.run.number })}</summary>
        <EntryForm viewer={viewer} action={`/dryer/${desk.dryer.id}/run-ends`} trouble={why}>
          <HiddenEntry name="run" value={desk.run.number} />
          <p>{say('dryer-end-run-says')}</p>
          <Act says={say('dryer-end-run', { run: desk.run.number })} tone="careful" />
        </EntryForm>
      </details>
    );
  }
  if (grades.length === 0) return <p>{say('dryer-no-grades')}</p>;
  return (
    <EntryForm viewer={viewer} action={`/dryer/${desk.dryer.id}/runs`} trouble={why}>
      <ChoiceEntry
        name="gradeId"
        label={say('dryer-grade')}
        as="tiles"
        required
        value={grades.length === 1 ? grades[0]?.id : undefined}
        choices={grades.map(({ id, code, name }) => ({ value: id, says: name, about: code }))}
        trouble={why}
      />
      <Act says={say('dryer-start-run')} />
    </EntryForm>
  );
}

interface DryersProps {
  readonly viewer: Viewer;
  readonly dryers: readonly (NamedRow & { readonly runNumber: string | null; readonly gradeName: string | null })[];
}

/** Which dryer? Each with what it makes now. */
export function dryersPage({ viewer, dryers }: DryersProps): VNode {
  return (
    <Shell title={say('dryers-title')} viewer={viewer} use="tablet">
      {dryers.length === 0 ? <p class="sentence">{say('dryers-none')}</p> : null}
      <ul class="acts dryer-list">
        {dryers.map(({ id, name, runNumber, gradeName }) => (
          <li key={id}>
            <a class="act plain" href={`/dryer/${id}`}>
              {name}
              <small>{runNumber === null ? say('dryer-stands') : `${gradeName ?? ''} · ${runNumber}`}</small>
            </a>
          </li>
        ))}
      </ul>
      <p class="acts">
        <ActLink href="/dryer/moves" says={say('dryer-to-moves')} />
        <ActLink href="/dryer/receipts" says={say('dryer-to-receipts')} />
        <ActLink href="/dryer/scales" says={say('dryer-to-scales')} />
      </p>
      <p class="caution">{say('dryer-caution')}</p>
    </Shell>
  );
}
