import type { VNode } from 'preact';
import type { DockDelivery } from '../../dispatch/dock-deliveries.js';
import { printedSscc } from '../../platform/printing/printed-figures.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Live } from '../../platform/web/kit/live.js';
import { clockText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { loadingActions, Unfit } from '../dispatch/loading.page.js';
import type { LoadingView } from '../dispatch/loading-view.js';
import { ScanToLoad } from '../dispatch/scan-to-load.js';
import { lastDigits, lotTail } from '../dispatch/unit-text.js';

interface DockListProps {
  readonly viewer: Viewer;
  readonly deliveries: readonly DockDelivery[];
}

/** The loader's first page: which vehicle. Only what may be loaded leads on to scanning. */
export function dockListPage({ viewer, deliveries }: DockListProps): VNode {
  const open = deliveries.filter(({ delivery }) => delivery.status === 'planned' || delivery.status === 'loading');
  return (
    <Shell title={say('dock-title')} viewer={viewer} use="handheld">
      <Live id="dock-list" about={[...loadingActions, 'plan-delivery']}>
        {open.length === 0 ? <p class="sentence">{say('dock-none')}</p> : null}
        <ul class="vehicles">
          {open.map(({ delivery, check, lines, step }) => {
            const isReady = check?.passed === true;
            const left = lines.reduce((sum, line) => sum + line.leftCount, 0);
            return (
              <li key={delivery.id}>
                <a class={isReady ? 'act asked' : 'act plain'} href={`/dock/${delivery.id}${isReady ? '' : '/check'}`}>
                  <strong>{delivery.orderNumber}</strong>
                  <span>{delivery.customerName ?? delivery.customerCode}</span>
                  <span>
                    {delivery.leavesAt === null ? '' : `${clockText(delivery.leavesAt, viewer.timeZone)} · `}
                    {isReady ? check.registration : say(`next-${step}`, { left, count: 0 })}
                  </span>
                </a>
              </li>
            );
          })}
        </ul>
      </Live>
      <p class="caution">{say('caution-vehicles')}</p>
    </Shell>
  );
}

interface DockPageProps {
  readonly viewer: Viewer;
  readonly loading: LoadingView;
  readonly trouble?: FormTrouble | null;
  readonly putBack?: string | null;
}

/** Scan, yes or no, next. */
export function dockPage({ viewer, loading, trouble = null, putBack = null }: DockPageProps): VNode {
  const { view, check, lines, step } = loading;
  const base = `/dock/${view.id}`;
  const isOpen = view.status === 'planned' || view.status === 'loading';
  return (
    <Shell title={`${view.orderNumber} · ${view.customerName ?? view.customerCode}`} viewer={viewer} use="handheld">
      {isOpen && check?.passed === true ? (
        <ScanToLoad viewer={viewer} base={base} loading={loading} trouble={trouble} putBack={putBack} />
      ) : (
        <p class={isOpen ? 'trouble' : 'sentence'}>{say(isOpen ? `next-${step}` : `delivery-now-${view.status}`)}</p>
      )}
      <Live id="dock" about={loadingActions}>
        <Unfit loading={loading} base={base} />
        <dl class="left-to-load">
          {lines.map((line) => (
            <div key={line.id}>
              <dt>{line.name}</dt>
              <dd>
                {line.leftCount === 0 ? say('dock-all-on') : say('dock-left', { left: countText(line.leftCount) })}
                <small>
                  {say('dock-on-of', { on: countText(line.loadedCount), need: countText(line.orderedCount) })}
                </small>
              </dd>
            </div>
          ))}
        </dl>
        <ol class="on-vehicle" reversed>
          {[...view.units].reverse().map((unit) => (
            <li key={unit.id} value={unit.place}>
              <span>
                <strong class="digits">{lastDigits(unit.name)}</strong> {lotTail(unit.lots)}
              </span>
              {isOpen ? (
                <a
                  class="act plain"
                  href={`${base}/unload?unit=${unit.id}`}
                  aria-label={say('dock-take-off', {
                    unit: unit.kind === 'pallet' ? printedSscc(unit.name) : unit.name,
                  })}
                >
                  {say('dispatch-take-off')}
                </a>
              ) : null}
            </li>
          ))}
        </ol>
      </Live>
      <div class="acts">
        {isOpen ? <ActLink href={`${base}/check`} says={say('dispatch-check')} /> : null}
        {isOpen && view.loadedCount > 0 ? <ActLink href={`${base}/count`} says={say('dispatch-count')} /> : null}
        <ActLink href="/dock" says={say('dock-other')} />
      </div>
      <p class="caution">{say('caution-vehicles')}</p>
    </Shell>
  );
}
