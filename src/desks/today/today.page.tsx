import type { VNode } from 'preact';
import { millisecondsBetween } from '../../platform/clock.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText, roundKilogramsText } from '../../platform/web/figures-text.js';
import { Live } from '../../platform/web/kit/live.js';
import { Table } from '../../platform/web/kit/table.js';
import { clockText, localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { StateMark } from '../../platform/web/state-mark.js';
import type { HopperToday, LineToday, TodayView } from './today-view.js';

interface TodayProps {
  readonly viewer: Viewer;
  readonly today: TodayView;
}

/** What changes what is shown here. */
const about = [
  ...['open-run', 'close-run', 'stop-line', 'start-line-again', 'tip-bag', 'end-tip', 'count-packs', 'check-line'],
  ...['place-hold', 'lift-hold', 'close-delivery', 'load-pallet', 'sign-account'],
];

/** The plant today: what runs, whether it adds up, and what waits for whom. Everything leads to its own page. */
export function todayPage({ viewer, today }: TodayProps): VNode {
  const { shift } = today;
  const at = (instant: string): string => clockText(instant, viewer.timeZone);
  return (
    <Shell title={say('today-title')} viewer={viewer}>
      <p class="sentence">
        {shift === null
          ? say('today-no-shift')
          : say('today-shift', {
              shift: shift.shiftCode,
              on: shift.productionOn,
              from: at(shift.startsAt),
              until: at(shift.endsAt),
            })}
      </p>
      <Live id="today" about={about}>
        <Lines viewer={viewer} today={today} />
        <Hoppers today={today} />
        <Points viewer={viewer} today={today} />
        <Holds viewer={viewer} today={today} />
        <Deliveries viewer={viewer} today={today} />
      </Live>
      <p>
        <a href="/interruptions">{say('today-interruptions', { count: today.interruptions, hours: today.tooOften })}</a>
      </p>
    </Shell>
  );
}

function Lines({ viewer, today }: TodayProps): VNode {
  return (
    <Table
      caption={say('today-lines')}
      columns={[{ head: say('today-line') }, { head: say('today-now') }, { head: say('today-checks') }]}
      rows={today.lines.map((line) => ({
        key: line.id,
        cells: [<a href={`/line/${line.id}`}>{line.name}</a>, lineText(line, viewer.timeZone), <Checks line={line} />],
      }))}
      empty={say('missing-line')}
    />
  );
}

function lineText(line: LineToday, timeZone: string): VNode | string {
  if (line.runId === null || line.startedAt === null) return say('today-no-run');
  const run = <a href={`/runs/${line.runId}`}>{line.runNumber}</a>;
  const facts = { format: line.formatName, at: localText(line.startedAt, timeZone) };
  if (line.stoppedAt === null) {
    return (
      <>
        {say('today-runs', facts)} {run}
      </>
    );
  }
  const why = say(`stop-reason-${line.stopReason ?? ''}`);
  return (
    <>
      <strong>{say('today-stands', { at: clockText(line.stoppedAt, timeZone), why })}</strong> {facts.format} {run}
    </>
  );
}

function Checks({ line }: { readonly line: LineToday }): VNode | null {
  if (line.checks.length === 0) return line.runId === null ? null : <>{say('today-checks-none')}</>;
  return (
    <a href={`/line/${line.id}/checks`}>
      {line.checks.map(({ plan, word }) => say(`today-check-${word}`, { station: plan.station })).join('; ')}
    </a>
  );
}

function Hoppers({ today }: { readonly today: TodayView }): VNode {
  return (
    <>
      <h2>{say('today-adds-up')}</h2>
      {today.hoppers.length === 0 ? <p>{say('missing-hopper')}</p> : null}
      {today.hoppers.map((hopper) => (
        <section key={hopper.id} class="card">
          <h3>
            <a href={`/hoppers/${hopper.id}`}>{hopper.name}</a>
          </h3>
          <p>{levelText(hopper)}</p>
          <p>{balanceText(hopper)}</p>
          {hopper.level.findings.length === 0 ? null : (
            <p>
              <StateMark state="doubtful" /> {say('today-level-doubtful')}{' '}
              <a href={`/hoppers/${hopper.id}`}>{say('today-look')}</a>
            </p>
          )}
        </section>
      ))}
      <p>
        <a href="/accounts">{say('today-accounts')}</a>
      </p>
    </>
  );
}

function levelText({ level }: HopperToday): string {
  if (level.periodId === null) return say('today-level-unknown');
  const { grams, lowerGrams, upperGrams, capacityGrams } = level;
  return say('today-level', {
    kilograms: roundKilogramsText(grams),
    least: roundKilogramsText(lowerGrams),
    most: roundKilogramsText(upperGrams),
    capacity: roundKilogramsText(capacityGrams),
  });
}

function balanceText({ thisShift }: HopperToday): string {
  if (thisShift === null) return say('today-no-shift');
  const sentence = say('today-balance', {
    opening: roundKilogramsText(thisShift.openingGrams),
    tipped: roundKilogramsText(thisShift.tippedGrams),
    packed: roundKilogramsText(thisShift.packedGrams),
    rejected: roundKilogramsText(thisShift.rejectGrams),
    samples: roundKilogramsText(thisShift.sampleGrams),
    swept: roundKilogramsText(thisShift.sweepingGrams),
    inside: roundKilogramsText(thisShift.insideGrams),
  });
  return thisShift.hasAssumed ? `${sentence} ${say('today-assumed')}` : sentence;
}

function Points({ viewer, today }: TodayProps): VNode {
  return (
    <Table
      caption={say('today-points')}
      columns={[
        { head: say('today-for') },
        { head: say('today-count'), align: 'number' },
        { head: say('today-oldest') },
      ]}
      rows={today.points.map(({ role, count, oldestAt }) => ({
        key: role,
        cells: [
          <a href={`/open-points?role=${role}`}>{say(`role-${role}`)}</a>,
          countText(count),
          `${say('today-hours', { hours: hoursSince(oldestAt, today.now) })} · ${localText(oldestAt, viewer.timeZone)}`,
        ],
      }))}
      empty={say('today-none')}
    />
  );
}

function hoursSince(at: string, now: string): string {
  return countText(Math.floor(millisecondsBetween(at, now) / 3_600_000));
}

function Holds({ viewer, today }: TodayProps): VNode {
  return (
    <Table
      caption={say('today-holds')}
      columns={[
        { head: say('today-hold') },
        { head: say('today-what') },
        { head: say('today-since') },
        { head: say('today-away'), align: 'number' },
      ]}
      rows={today.holds.map((hold) => ({
        key: hold.id,
        isLoud: hold.awayCount > 0,
        cells: [
          <a href={`/holds/${hold.id}`}>{hold.number}</a>,
          `${say(`scope-${hold.scopeKind}`)}: ${hold.reason}`,
          localText(hold.placedAt, viewer.timeZone),
          hold.awayCount === 0 ? '–' : countText(hold.awayCount),
        ],
      }))}
      empty={say('today-none')}
    />
  );
}

function Deliveries({ viewer, today }: TodayProps): VNode {
  return (
    <Table
      caption={say('today-deliveries')}
      columns={[
        { head: say('today-order') },
        { head: say('today-customer') },
        { head: say('today-leaves') },
        { head: say('today-now') },
        { head: say('today-on-it'), align: 'number' },
      ]}
      rows={today.deliveries.map((delivery) => ({
        key: delivery.id,
        cells: [
          <a href={`/deliveries/${delivery.id}`}>{delivery.orderNumber}</a>,
          delivery.customerName ?? delivery.customerCode,
          delivery.leavesAt === null ? delivery.plannedOn : localText(delivery.leavesAt, viewer.timeZone),
          say(`delivery-now-${delivery.status}`),
          countText(delivery.loadedCount),
        ],
      }))}
      empty={say('today-none')}
    />
  );
}
