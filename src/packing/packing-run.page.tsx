import type { VNode } from 'preact';
import { formatKilograms } from '../core/units/grams.js';
import { HoldLink } from '../disposition/hold-link.js';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import { ActLink } from '../platform/web/kit/act.js';
import { Figures } from '../platform/web/kit/figures.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { countsText, gramsOfMilligrams, groupedCount, minutesBetween } from './counts-text.js';
import type { RunView } from './run-view.js';

/** What the packs hold on average, as the room of the fill weights knows it. */
interface MeanNetShown {
  readonly meanMilligrams: number;
  readonly lowerMilligrams: number;
  readonly upperMilligrams: number;
  readonly basis: 'measured' | 'assumed';
  readonly samplePackCount: number;
  readonly weighedAt: string | null;
  readonly weighedPackCount: number;
  readonly unweighedPackCount: number;
}

interface PackingRunProps {
  readonly viewer: Viewer;
  readonly view: RunView;
  readonly meanNet: MeanNetShown;
}

/** One run: what it packs, from when to when, and all that was recorded of it. */
export function packingRunPage({ viewer, view, meanNet }: PackingRunProps): VNode {
  const { run } = view;
  const at = (instant: string) => localText(instant, viewer.timeZone);
  const mayCorrect = mayDo(viewer.actor.roles, 'correct');
  const from = { format: run.formatName, line: run.lineName, from: at(run.startedAt) };
  return (
    <Shell title={say('run-title', { number: run.number })} viewer={viewer}>
      <p class="sentence">
        {run.closedAt === null
          ? say('run-open-since', from)
          : say('run-from-until', { ...from, until: at(run.closedAt) })}
      </p>
      <Figures
        of={[
          { label: say('run-packs'), value: groupedCount(run.packCount) },
          { label: say('run-last-count'), value: at(run.lastCountedAt) },
          { label: say(`run-mean-${meanNet.basis}`), value: gramsOfMilligrams(meanNet.meanMilligrams) },
          {
            label: say('run-mean-limits'),
            value: say('run-limits', {
              lower: gramsOfMilligrams(meanNet.lowerMilligrams),
              upper: gramsOfMilligrams(meanNet.upperMilligrams),
            }),
          },
          {
            label: say('run-kilograms'),
            value: formatKilograms(Math.round((run.packCount * meanNet.meanMilligrams) / 1000), { thousands: true }),
          },
        ]}
      />
      <p class="quiet">{saysMean(meanNet, at)}</p>
      <div class="acts">
        <ActLink href={`/thread?code=${run.number}`} says={say('lot-follow', { code: run.number })} />
        <ActLink href={`/runs/${run.id}/counts`} says={say('run-to-counts')} />
        <ActLink href={`/runs/${run.id}/weights`} says={say('run-to-weights')} />
        <HoldLink viewer={viewer} kind="packing-run" id={run.id} />
      </div>
      <p class="caution">{say('run-caution-jam')}</p>
      <p class="caution">{say('run-caution-dust')}</p>
      <Lots view={view} at={at} mayCorrect={mayCorrect} />
      <Films view={view} at={at} mayCorrect={mayCorrect} />
      <Stops view={view} at={at} />
      <Removals view={view} at={at} mayCorrect={mayCorrect} />
      <Loose view={view} at={at} />
    </Shell>
  );
}

interface PartProps {
  readonly view: RunView;
  readonly at: (instant: string) => string;
}

interface CorrectableProps extends PartProps {
  readonly mayCorrect: boolean;
}

function Lots({ view, at, mayCorrect }: CorrectableProps): VNode {
  return (
    <Table
      caption={say('run-lots')}
      columns={[
        { head: say('lot-code'), align: 'code' },
        { head: say('run-counts') },
        { head: say('run-since') },
        { head: say('lot-intended') },
        { head: say('lot-thread') },
        ...(mayCorrect ? [{ head: say('record-correct') }] : []),
      ]}
      rows={view.lots.map((lot) => ({
        key: lot.changeId,
        cells: [
          <a href={`/lots/${lot.lotId}`}>{lot.code}</a>,
          countsText(lot),
          at(lot.changedAt),
          lot.isAsIntended
            ? say('lot-as-intended')
            : say('lot-not-as-intended', { intended: lot.intendedCode === '' ? null : lot.intendedCode }),
          <a href={`/thread?code=${encodeURIComponent(lot.code)}`}>{say('lot-follow', { code: lot.code })}</a>,
          ...(mayCorrect
            ? [<Correct path={`/codes/${lot.changeId}`} says={say('lot-correct-one', { code: lot.code })} />]
            : []),
        ],
      }))}
    />
  );
}

function Films({ view, at, mayCorrect }: CorrectableProps): VNode {
  return (
    <Table
      caption={say('run-films')}
      columns={[
        { head: say('film-code'), align: 'code' },
        { head: say('film-kind-head') },
        { head: say('run-counts') },
        { head: say('run-since') },
        ...(mayCorrect ? [{ head: say('record-correct') }] : []),
      ]}
      rows={view.films.map((film) => ({
        key: film.useId,
        cells: [
          <a href={`/thread?code=${encodeURIComponent(film.code)}`}>{film.code}</a>,
          say(`film-kind-${film.kind}`),
          countsText(film),
          at(film.fittedAt),
          ...(mayCorrect
            ? [<Correct path={`/film-uses/${film.useId}`} says={say('film-correct-one', { film: film.code })} />]
            : []),
        ],
      }))}
    />
  );
}

function Correct({ path, says }: { readonly path: string; readonly says: string }): VNode {
  return (
    <a href={`${path}/correct`} aria-label={says}>
      {say('record-correct')}
    </a>
  );
}

function Stops({ view, at }: PartProps): VNode {
  const { closedAt } = view.run;
  return (
    <Table
      caption={say('run-stops')}
      columns={[
        { head: say('stop-from') },
        { head: say('stop-until') },
        { head: say('stop-minutes'), align: 'number' },
        { head: say('stop-reason') },
      ]}
      rows={view.stops.map((stop) => {
        const until = stop.startedAgainAt ?? closedAt;
        const cells = [
          at(stop.stoppedAt),
          until === null ? say('stop-stands') : at(until),
          until === null ? '' : minutesBetween(stop.stoppedAt, until),
          say(`stop-reason-${stop.reason}`),
        ];
        return { key: stop.id, cells };
      })}
    />
  );
}

function Removals({ view, at, mayCorrect }: CorrectableProps): VNode {
  return (
    <Table
      caption={say('run-removals')}
      columns={[
        { head: say('removal-when') },
        { head: say('removal-what') },
        { head: say('removal-why') },
        { head: say('run-packs'), align: 'number' },
        { head: say('removal-kilograms'), align: 'number' },
        { head: say('removal-where') },
        ...(mayCorrect ? [{ head: say('record-correct') }] : []),
      ]}
      rows={view.removals.map((removal) => ({
        key: removal.id,
        cells: [
          at(removal.removedAt),
          say(`removal-kind-${removal.kind}`),
          say(`removal-reason-${removal.reason}`),
          removal.packCount ?? '',
          removal.scaleId === null
            ? say('removal-counted', { mass: formatKilograms(removal.grams, { thousands: true }) })
            : formatKilograms(removal.grams, { thousands: true }),
          say(`removal-fate-${removal.fate}`),
          ...(mayCorrect
            ? [
                <Correct
                  path={`/removals/${removal.id}`}
                  says={say('removal-correct-one', {
                    what: say(`removal-kind-${removal.kind}`),
                    at: at(removal.removedAt),
                  })}
                />,
              ]
            : []),
        ],
      }))}
    />
  );
}

function Loose({ view, at }: PartProps): VNode {
  return (
    <Table
      caption={say('run-loose')}
      columns={[{ head: say('removal-when') }, { head: say('run-packs'), align: 'number' }]}
      rows={view.loose.map((loose) => ({
        key: loose.id,
        cells: [at(loose.countedAt), groupedCount(loose.packCount)],
      }))}
    />
  );
}

/** What the mean rests on; of packs that were not weighed, what they are taken to hold. */
function saysMean(meanNet: MeanNetShown, at: (instant: string) => string): string {
  const { weighedAt, samplePackCount, weighedPackCount, unweighedPackCount } = meanNet;
  const otherwise =
    weighedAt === null
      ? say('run-mean-says-assumed')
      : say('run-mean-says-measured', { count: samplePackCount, at: at(weighedAt) });
  if (weighedPackCount === 0) return otherwise;
  const weighed = say('run-mean-says-weighed', { count: groupedCount(weighedPackCount) });
  if (unweighedPackCount === 0) return weighed;
  const rest = say(weighedAt === null ? 'run-mean-says-rest-assumed' : 'run-mean-says-rest-sampled', {
    count: groupedCount(unweighedPackCount),
  });
  return `${weighed} ${rest}`;
}
