import type { ComponentChildren, VNode } from 'preact';
import { formatKilograms } from '../core/units/grams.js';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { gramsOfMilligrams, groupedCount, minutesBetween } from './counts-text.js';
import type { RunCounts } from './packing-run-rows.js';
import type { RunView } from './run-view.js';

/** What the packs hold on average, as the room of the fill weights knows it. */
interface MeanNetShown {
  readonly meanMilligrams: number;
  readonly lowerMilligrams: number;
  readonly upperMilligrams: number;
  readonly basis: 'measured' | 'assumed';
  readonly samplePackCount: number;
  readonly weighedAt: string | null;
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
  const from = { format: run.formatName, line: run.lineName, from: at(run.startedAt) };
  return (
    <Shell title={say('run-title', { number: run.number })} viewer={viewer}>
      <p class="sentence">
        {run.closedAt === null
          ? say('run-open-since', from)
          : say('run-from-until', { ...from, until: at(run.closedAt) })}
      </p>
      <dl class="figures">
        <Figure name={say('run-packs')}>{groupedCount(run.packCount)}</Figure>
        <Figure name={say('run-last-count')}>{at(run.lastCountedAt)}</Figure>
        <Figure name={say(`run-mean-${meanNet.basis}`)}>{gramsOfMilligrams(meanNet.meanMilligrams)}</Figure>
        <Figure name={say('run-mean-limits')}>
          {say('run-limits', {
            lower: gramsOfMilligrams(meanNet.lowerMilligrams),
            upper: gramsOfMilligrams(meanNet.upperMilligrams),
          })}
        </Figure>
        <Figure name={say('run-kilograms')}>
          {formatKilograms(Math.round((run.packCount * meanNet.meanMilligrams) / 1000), { thousands: true })}
        </Figure>
      </dl>
      <p class="quiet">
        {meanNet.weighedAt === null
          ? say('run-mean-says-assumed')
          : say('run-mean-says-measured', { count: meanNet.samplePackCount, at: at(meanNet.weighedAt) })}
      </p>
      <p class="caution">{say('run-caution-jam')}</p>
      <p class="caution">{say('run-caution-dust')}</p>
      <Lots view={view} at={at} />
      <Films view={view} at={at} />
      <Stops view={view} at={at} />
      <Removals view={view} at={at} />
      <Loose view={view} at={at} />
    </Shell>
  );
}

interface PartProps {
  readonly view: RunView;
  readonly at: (instant: string) => string;
}

function Lots({ view, at }: PartProps): VNode {
  const heads = ['lot-code', 'run-counts', 'run-since', 'lot-intended', 'lot-thread'];
  return (
    <Table title={say('run-lots')} heads={heads} isEmpty={view.lots.length === 0}>
      {view.lots.map((lot) => (
        <tr key={lot.changeId}>
          <th scope="row" class="code">
            <a href={`/lots/${lot.lotId}`}>{lot.code}</a>
          </th>
          <td>{countsText(lot)}</td>
          <td>{at(lot.changedAt)}</td>
          <td>
            {lot.isAsIntended
              ? say('lot-as-intended')
              : say('lot-not-as-intended', { intended: lot.intendedCode === '' ? null : lot.intendedCode })}
          </td>
          <td>
            <a href={`/thread?code=${encodeURIComponent(lot.code)}`}>{say('lot-follow', { code: lot.code })}</a>
          </td>
        </tr>
      ))}
    </Table>
  );
}

function Films({ view, at }: PartProps): VNode {
  const heads = ['film-code', 'film-kind-head', 'run-counts', 'run-since'];
  return (
    <Table title={say('run-films')} heads={heads} isEmpty={view.films.length === 0}>
      {view.films.map((film) => (
        <tr key={film.useId}>
          <th scope="row" class="code">
            <a href={`/thread?code=${encodeURIComponent(film.code)}`}>{film.code}</a>
          </th>
          <td>{say(`film-kind-${film.kind}`)}</td>
          <td>{countsText(film)}</td>
          <td>{at(film.fittedAt)}</td>
        </tr>
      ))}
    </Table>
  );
}

function Stops({ view, at }: PartProps): VNode {
  const { closedAt } = view.run;
  return (
    <Table
      title={say('run-stops')}
      heads={['stop-from', 'stop-until', 'stop-minutes', 'stop-reason']}
      isEmpty={view.stops.length === 0}
    >
      {view.stops.map((stop) => {
        const until = stop.startedAgainAt ?? closedAt;
        return (
          <tr key={stop.id}>
            <td>{at(stop.stoppedAt)}</td>
            <td>{until === null ? say('stop-stands') : at(until)}</td>
            <td class="number">{until === null ? '' : minutesBetween(stop.stoppedAt, until)}</td>
            <td>{say(`stop-reason-${stop.reason}`)}</td>
          </tr>
        );
      })}
    </Table>
  );
}

function Removals({ view, at }: PartProps): VNode {
  const heads = ['removal-when', 'removal-what', 'removal-why', 'run-packs', 'removal-kilograms', 'removal-where'];
  return (
    <Table title={say('run-removals')} heads={heads} isEmpty={view.removals.length === 0}>
      {view.removals.map((removal) => (
        <tr key={removal.id}>
          <td>{at(removal.removedAt)}</td>
          <td>{say(`removal-kind-${removal.kind}`)}</td>
          <td>{say(`removal-reason-${removal.reason}`)}</td>
          <td class="number">{removal.packCount ?? ''}</td>
          <td class="number">
            {removal.scaleId === null
              ? say('removal-counted', { mass: formatKilograms(removal.grams) })
              : formatKilograms(removal.grams)}
          </td>
          <td>{say(`removal-fate-${removal.fate}`)}</td>
        </tr>
      ))}
    </Table>
  );
}

function Loose({ view, at }: PartProps): VNode {
  return (
    <Table title={say('run-loose')} heads={['removal-when', 'run-packs']} isEmpty={view.loose.length === 0}>
      {view.loose.map((loose) => (
        <tr key={loose.id}>
          <td>{at(loose.countedAt)}</td>
          <td class="number">{groupedCount(loose.packCount)}</td>
        </tr>
      ))}
    </Table>
  );
}

function countsText({ fromCount, toCount }: RunCounts): string {
  const from = groupedCount(fromCount + 1);
  return toCount === null
    ? say('counts-from-on', { from })
    : say('counts-from-to', { from, to: groupedCount(toCount) });
}

function Figure({ name, children }: { readonly name: string; readonly children: ComponentChildren }): VNode {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function Table(props: {
  readonly title: string;
  readonly heads: readonly string[];
  readonly isEmpty: boolean;
  readonly children: ComponentChildren;
}): VNode {
  if (props.isEmpty) {
    return (
      <section>
        <h2>{props.title}</h2>
        <p class="quiet">{say('nothing-here')}</p>
      </section>
    );
  }
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={props.title}>
      <table>
        <caption>{props.title}</caption>
        <thead>
          <tr>
            {props.heads.map((head) => (
              <th key={head} scope="col">
                {say(head)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{props.children}</tbody>
      </table>
    </div>
  );
}
