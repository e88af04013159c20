import type { VNode } from 'preact';
import type { DockDelivery } from '../../dispatch/dock-deliveries.js';
import type { ReturnedUnitRow } from '../../dispatch/returns.js';
import { mayDo } from '../../platform/actor.js';
import { printedDay } from '../../platform/printing/printed-figures.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Live } from '../../platform/web/kit/live.js';
import { ScanBand, type Scanned } from '../../platform/web/kit/scan-band.js';
import { Table } from '../../platform/web/kit/table.js';
import { clockText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { loadingActions } from './loading.page.js';

/** What a scan led to, and where that is. */
export interface FoundByScan extends Scanned {
  readonly href?: string | undefined;
}

interface TodayPageProps {
  readonly viewer: Viewer;
  readonly deliveries: readonly DockDelivery[];
  readonly returned: readonly ReturnedUnitRow[];
  readonly today: string;
  readonly scanned: FoundByScan | null;
}

/** Today's deliveries by departure: need, on, left, and what stands in the way. */
export function dispatchTodayPage({ viewer, deliveries, returned, today, scanned }: TodayPageProps): VNode {
  const { roles } = viewer.actor;
  return (
    <Shell title={say('dispatch-title')} viewer={viewer}>
      <ScanBand action="/dispatch" scanned={scanned} hint={say('dispatch-scan-hint')}>
        {scanned?.href === undefined ? null : (
          <ActLink href={scanned.href} says={say('dispatch-open')} accessKey="o" tone="asked" />
        )}
      </ScanBand>
      <div class="acts">
        {mayDo(roles, 'keep-deliveries') ? (
          <ActLink href="/dispatch/new" says={say('dispatch-plan')} accessKey="n" tone="asked" />
        ) : null}
        <ActLink href="/dispatch/stock" says={say('dispatch-stock')} accessKey="k" />
        <ActLink href="/deliveries" says={say('dispatch-all')} accessKey="a" />
      </div>
      <Live id="today" about={[...loadingActions, 'plan-delivery', 'decide-return']}>
        <Table
          caption={say('dispatch-today', { day: printedDay(today) })}
          empty={say('dispatch-none')}
          columns={[
            { head: say('dispatch-order') },
            { head: say('dispatch-leaves-at') },
            { head: say('delivery-vehicle') },
            { head: say('delivery-need'), align: 'number' },
            { head: say('delivery-on'), align: 'number' },
            { head: say('delivery-left-over'), align: 'number' },
            { head: say('delivery-status') },
            { head: say('dispatch-next') },
          ]}
          rows={deliveries.map((docked) => rowOf(viewer, docked, today))}
        />
        {returned.length === 0 ? null : (
          <Table
            caption={say('dispatch-returns-wait', { count: returned.length })}
            columns={[
              { head: say('dispatch-order') },
              { head: say('delivery-unit'), align: 'code' },
              { head: say('return-why') },
              { head: say('return-place') },
            ]}
            rows={returned.map((row) => ({
              key: row.id,
              cells: [
                <a href={`/dispatch/${row.deliveryId}/return`}>
                  {row.orderNumber} · {row.customerName}
                </a>,
                row.name,
                say(`return-${row.why}`),
                row.placeCode,
              ],
            }))}
          />
        )}
      </Live>
      <p class="caution">{say('caution-vehicles')}</p>
    </Shell>
  );
}

function rowOf(viewer: Viewer, docked: DockDelivery, today: string) {
  const { delivery, lines, check, step, unfit, counts } = docked;
  const sum = (counted: (line: (typeof lines)[number]) => number): string =>
    countText(lines.reduce((total, line) => total + counted(line), 0));
  const isStopped = ['take-off', 'stop-at-gate', 'mend-vehicle'].includes(step);
  const facts = {
    count: unfit.length,
    left: lines.reduce((total, line) => total + line.leftCount, 0),
    difference: counts.difference ?? 0,
  };
  return {
    key: delivery.id,
    isLoud: isStopped,
    cells: [
      <a href={`/dispatch/${delivery.id}`}>
        {delivery.orderNumber} · {delivery.customerName ?? delivery.customerCode}
      </a>,
      delivery.leavesAt === null
        ? delivery.plannedOn === today
          ? say('dispatch-some-time')
          : printedDay(delivery.plannedOn)
        : clockText(delivery.leavesAt, viewer.timeZone),
      check === null ? '–' : check.registration,
      sum((line) => line.orderedCount),
      sum((line) => line.loadedCount),
      sum((line) => line.leftCount),
      say(`delivery-now-${delivery.status}`),
      isStopped ? <strong>{say(`next-${step}`, facts)}</strong> : say(`next-${step}`, facts),
    ],
  };
}
