import type { VNode } from 'preact';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import type { PeriodView } from './hopper-views.js';
import { mass } from './level-text.js';
import type { TipRow } from './tips.js';

/** What went in. */
export function TipTable({ tips, viewer }: { readonly tips: readonly TipRow[]; readonly viewer: Viewer }): VNode {
  const { timeZone } = viewer;
  const mayCorrect = mayDo(viewer.actor.roles, 'correct');
  return (
    <Table
      caption={say('hopper-tips', { count: tips.length })}
      columns={[
        { head: say('tip-what') },
        { head: say('tip-opened') },
        { head: say('tip-off') },
        { head: say('tip-poured'), align: 'number' },
        { head: say('tip-known-by') },
        ...(mayCorrect ? [{ head: say('tip-correct') }] : []),
      ]}
      rows={tips.map((tip) => ({
        key: tip.id,
        cells: [
          <TipName tip={tip} />,
          localText(tip.openedAt, timeZone) + (tip.isLate ? ` · ${say('tip-time-stated')}` : ''),
          tip.offAt === null ? say('tip-hangs-still') : localText(tip.offAt, timeZone),
          mass(Math.max(0, tip.netGrams - (tip.restGrams ?? 0))),
          say(`known-by-${tip.identifiedBy}`),
          ...(mayCorrect ? [<TipCorrection tip={tip} />] : []),
        ],
      }))}
    />
  );
}

function TipCorrection({ tip }: { readonly tip: TipRow }): VNode {
  const bag = tip.bagNumber ?? tip.binNumber ?? say('tip-unread');
  return (
    <a href={`/tips/${tip.id}/correct`} aria-label={say('tip-correct-one', { bag })}>
      {say('tip-correct')}
    </a>
  );
}

function TipName({ tip }: { readonly tip: TipRow }): VNode {
  if (tip.bagId !== null) return <a href={`/thread?code=${tip.bagId}`}>{tip.bagNumber}</a>;
  return <span>{tip.binNumber ?? say('tip-unread')}</span>;
}

function RemovalCorrection({
  id,
  says,
  at,
}: {
  readonly id: string;
  readonly says: string;
  readonly at: string;
}): VNode {
  return (
    <a href={`/removals/${id}/correct`} aria-label={say('exit-correct-one', { what: says, at })}>
      {say('tip-correct')}
    </a>
  );
}

/** What left, and the levels that were seen. */
export function ExitTable({ view, viewer }: { readonly view: PeriodView; readonly viewer: Viewer }): VNode {
  const { timeZone } = viewer;
  const mayCorrect = mayDo(viewer.actor.roles, 'correct');
  const runs = view.runs.map(({ runId, number, fromCount, toCount, grams }) => ({
    key: runId,
    cells: [
      <a href={`/runs/${runId}`}>{number}</a>,
      say('exit-packs', { from: fromCount + 1, to: toCount }),
      mass(grams),
    ],
  }));
  const removals = view.removals.map(({ removalId, kind, grams, removedAt }) => ({
    key: removalId,
    cells: [
      say(`exit-${kind}`),
      <>
        {localText(removedAt, timeZone)}{' '}
        {mayCorrect ? (
          <RemovalCorrection id={removalId} says={say(`exit-${kind}`)} at={localText(removedAt, timeZone)} />
        ) : null}
      </>,
      mass(grams),
    ],
  }));
  const levels = view.levels.map(({ id, how, lowerGrams, upperGrams, seenAt }) => ({
    key: id,
    cells: [
      say(`level-${how}`),
      localText(seenAt, timeZone),
      say('level-between', { lower: mass(lowerGrams), upper: mass(upperGrams) }),
    ],
  }));
  return (
    <Table
      caption={say('hopper-exits')}
      columns={[{ head: say('exit-what') }, { head: say('exit-which') }, { head: say('exit-mass'), align: 'number' }]}
      rows={[...runs, ...removals, ...levels]}
    />
  );
}
