import type { ComponentChildren, VNode } from 'preact';
import type { UnitView } from '../../dispatch/delivery-views.js';
import { whyUnfit } from '../../dispatch/unit-standing.js';
import type { UnfitUnit } from '../../dispatch/units-on.js';
import { mayDo } from '../../platform/actor.js';
import { printedSscc } from '../../platform/printing/printed-figures.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText, kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { ActLink, Key } from '../../platform/web/kit/act.js';
import { Live } from '../../platform/web/kit/live.js';
import { Table } from '../../platform/web/kit/table.js';
import { clockText, localText, sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { LoadingView } from './loading-view.js';
import { ScanToLoad } from './scan-to-load.js';
import { lastDigits } from './unit-text.js';
import { VehicleFloor } from './vehicle-floor.js';

/** What changes a loading page while it is open. */
export const loadingActions = [
  ...['load-pallet', 'load-bag', 'unload', 'check-vehicle', 'count-blind', 'refuse-scan', 'change-delivery'],
  ...['close-delivery', 'void-delivery-note', 'vehicle-leaves', 'cancel-delivery', 'take-back'],
  ...['place-hold', 'lift-hold', 'set-hold-class', 'decide', 'correct-result', 'report-result', 'correct-coder-change'],
] as const;

interface LoadingPageProps {
  readonly viewer: Viewer;
  readonly loading: LoadingView;
  readonly trouble?: FormTrouble | null;
  /** Where a refused unit goes back to. */
  readonly putBack?: string | null;
}

/** One delivery at the dock: what next, what is missing, may I print. */
export function loadingPage({ viewer, loading, trouble = null, putBack = null }: LoadingPageProps): VNode {
  const { view } = loading;
  const title = `${view.orderNumber} · ${view.customerName ?? view.customerCode}`;
  return (
    <Shell title={title} viewer={viewer}>
      <Head viewer={viewer} loading={loading} />
      {view.status === 'planned' || view.status === 'loading' ? (
        <ScanToLoad
          viewer={viewer}
          base={`/dispatch/${view.id}`}
          loading={loading}
          trouble={trouble}
          putBack={putBack}
        />
      ) : null}
      <Live id="loading" about={loadingActions}>
        <Unfit loading={loading} base={`/dispatch/${view.id}`} />
        <div class="need-and-next">
          <Need loading={loading} />
          <Next viewer={viewer} loading={loading} />
        </div>
        <VehicleFloor
          units={view.units}
          unfitIds={new Set(loading.unfit.map(({ id }) => id))}
          lastId={loading.last?.id ?? null}
        />
        <Refused viewer={viewer} loading={loading} />
        <Units viewer={viewer} loading={loading} />
        <Papers viewer={viewer} loading={loading} />
        <Returned loading={loading} />
      </Live>
      <p class="caution">{say('caution-vehicles')}</p>
    </Shell>
  );
}

interface PartProps {
  readonly viewer: Viewer;
  readonly loading: LoadingView;
}

function Head({ viewer, loading: { view, check } }: PartProps): VNode {
  const leaves = view.leavesAt === null ? view.plannedOn : localText(view.leavesAt, viewer.timeZone);
  return (
    <p class="sentence">
      <a href="/dispatch" accessKey="b" data-back>
        {say('dispatch-back')} <Key of="b" />
      </a>{' '}
      · {say(`delivery-now-${view.status}`)} · {say('dispatch-leaves', { at: leaves })}
      {check === null || !check.passed
        ? ''
        : ` · ${say('dispatch-vehicle-checked', {
            registration: check.registration,
            at: clockText(check.checkedAt, viewer.timeZone),
          })}`}
    </p>
  );
}

/** Units on the vehicle that may not go: named, each with the way to take it off. */
export function Unfit({ loading, base }: { readonly loading: LoadingView; readonly base: string }): VNode | null {
  const { unfit, view } = loading;
  if (unfit.length === 0) return null;
  const mayUnload = view.status === 'loading';
  return (
    <section class="card must-not" role="alert" aria-labelledby="unfit">
      <h2 id="unfit">{say('dispatch-unfit', { count: unfit.length })}</h2>
      <ul class="unfit">
        {unfit.map((unit) => (
          <li key={unit.id}>
            <strong class="digits">{lastDigits(unit.name)}</strong> {say(`state-${unit.state}`)} · {whyUnfit(unit)}{' '}
            {mayUnload ? <ActLink href={`${base}/unload?unit=${unit.id}`} says={say('dispatch-take-off')} /> : null}
          </li>
        ))}
      </ul>
      <p>{say(mayUnload ? 'dispatch-unfit-loading' : 'dispatch-unfit-closed')}</p>
    </section>
  );
}

/** Need, on and left, large enough to be read from the truck's seat. */
export function Need({ loading: { lines } }: { readonly loading: Pick<LoadingView, 'lines'> }): VNode {
  return (
    <div class="need">
      <Table
        caption={say('delivery-lines')}
        hasHiddenCaption
        columns={[
          { head: say('delivery-goods') },
          { head: say('delivery-need'), align: 'number' },
          { head: say('delivery-on'), align: 'number' },
          { head: say('delivery-left-over'), align: 'number' },
        ]}
        rows={lines.map((line) => ({
          key: line.id,
          cells: [
            line.formatId === null ? `${line.name} (${say('delivery-whole-bags')})` : line.name,
            countText(line.orderedCount),
            countText(line.loadedCount),
            line.leftCount === 0 ? `0 ${say('dispatch-all-on')}` : countText(line.leftCount),
          ],
        }))}
      />
    </div>
  );
}

/** What is to be done next, as one sentence, and the acts; printing is locked with its reason until it may be. */
function Next({ viewer, loading }: PartProps): VNode {
  const { step, view, counts } = loading;
  const { roles } = viewer.actor;
  const base = `/dispatch/${view.id}`;
  const isOpen = view.status === 'planned' || view.status === 'loading';
  const facts = {
    count: loading.unfit.length,
    left: loading.lines.reduce((sum, line) => sum + line.leftCount, 0),
    difference: counts.difference ?? 0,
  };
  return (
    <section
      class={`to-do ${['take-off', 'stop-at-gate', 'mend-vehicle'].includes(step) ? 'stop' : ''}`}
      aria-labelledby="next"
    >
      <h2 id="next">{say('dispatch-next')}</h2>
      <p class="sentence">
        {say(step === 'count-again' && counts.difference !== null ? 'next-compare' : `next-${step}`, facts)}
      </p>
      <div class="acts">
        {isOpen && mayDo(roles, 'load-vehicles') ? (
          <>
            <ActLink
              href={`${base}/check`}
              says={say('dispatch-check')}
              accessKey="v"
              tone={toneOf(step, 'check', 'mend-vehicle')}
            />
            {view.loadedCount === 0 ? null : (
              <ActLink
                href={`${base}/count`}
                says={say('dispatch-count')}
                accessKey="c"
                tone={toneOf(step, 'count', 'count-again')}
              />
            )}
          </>
        ) : null}
        {isOpen ? <Closing viewer={viewer} loading={loading} base={base} /> : null}
        {view.status === 'closed' && mayDo(roles, 'close-deliveries') ? (
          <>
            <ActLink href={`${base}/leave`} says={say('dispatch-leave')} accessKey="g" tone={toneOf(step, 'leave')} />
            <ActLink
              href={`${base}/void`}
              says={say('dispatch-void')}
              accessKey="n"
              tone={toneOf(step, 'stop-at-gate')}
            />
          </>
        ) : null}
        {view.status === 'left' && mayDo(roles, 'keep-deliveries') ? (
          <ActLink href={`${base}/return`} says={say('dispatch-return')} accessKey="r" />
        ) : null}
      </div>
    </section>
  );
}

function toneOf(step: string, ...steps: string[]): 'asked' | 'plain' {
  return steps.includes(step) ? 'asked' : 'plain';
}

function Closing({ viewer, loading, base }: PartProps & { readonly base: string }): VNode | null {
  const { roles } = viewer.actor;
  const { step, view, counts } = loading;
  return (
    <>
      {!mayDo(roles, 'close-deliveries') ? null : step === 'close' ? (
        <ActLink href={`${base}/close`} says={say('dispatch-close')} accessKey="p" tone="asked" />
      ) : (
        <button type="button" class="act plain" disabled>
          {say('dispatch-close-locked', { why: say(lockOf(step, counts.last === null)) })}
        </button>
      )}
      {mayDo(roles, 'keep-deliveries') ? (
        <>
          <ActLink href={`${base}/change`} says={say('dispatch-change')} accessKey="e" />
          {view.loadedCount === 0 ? <ActLink href={`${base}/cancel`} says={say('dispatch-cancel')} /> : null}
        </>
      ) : null}
    </>
  );
}

function lockOf(step: LoadingView['step'], isUncounted: boolean): string {
  if (step === 'check' || step === 'mend-vehicle') return 'locked-vehicle';
  if (step === 'take-off') return 'locked-unfit';
  return isUncounted ? 'locked-uncounted' : 'locked-count';
}

function Refused({ viewer, loading: { refused } }: PartProps): VNode | null {
  if (refused.length === 0) return null;
  return (
    <Table
      caption={say('dispatch-refused', { count: refused.length })}
      columns={[{ head: say('dispatch-refused-at') }, { head: say('dispatch-refused-why') }]}
      rows={refused.map(({ id, code, facts, refusedAt }) => ({
        key: id,
        cells: [clockText(refusedAt, viewer.timeZone), sayLocally(code, facts, viewer.timeZone)],
      }))}
    />
  );
}

function Units({ viewer, loading: { view, unfit } }: PartProps): VNode {
  const stopped = new Map(unfit.map((unit): [string, UnfitUnit] => [unit.id, unit]));
  const isOpen = view.status === 'loading' && mayDo(viewer.actor.roles, 'load-vehicles');
  return (
    <Table
      caption={say('delivery-what-is-on')}
      empty={say('delivery-nothing-on')}
      columns={[
        { head: say('delivery-place'), align: 'number' },
        { head: say('delivery-unit'), align: 'code' },
        { head: say('delivery-goods') },
        { head: say('delivery-lots'), align: 'code' },
        { head: say('delivery-packs'), align: 'number' },
        { head: say('delivery-net'), align: 'number' },
        { head: say('delivery-loaded-at') },
        ...(isOpen ? [{ head: say('dispatch-take-off') }] : []),
      ]}
      rows={view.units.map((unit) => ({
        key: unit.id,
        isLoud: stopped.has(unit.id),
        cells: [
          unit.place,
          <UnitName unit={unit} />,
          unit.kind === 'pallet' ? unit.goods : say('delivery-whole-bag'),
          unit.lots.join(', '),
          unit.packCount === null ? '–' : countText(unit.packCount),
          kilogramsText(unit.netGrams),
          clockText(unit.loadedAt, viewer.timeZone),
          ...(isOpen ? [<a href={`/dispatch/${view.id}/unload?unit=${unit.id}`}>{say('dispatch-take-off')}</a>] : []),
        ],
      }))}
    />
  );
}

function UnitName({ unit }: { readonly unit: UnitView }): VNode {
  return unit.kind === 'pallet' ? (
    <a href={`/pallets/${unit.id}`}>{printedSscc(unit.name)}</a>
  ) : (
    <a href={`/bags/${unit.id}`}>{unit.name}</a>
  );
}

function Papers({ viewer, loading: { view } }: PartProps): VNode | null {
  if (view.notes.length === 0) return null;
  return (
    <Table
      caption={say('delivery-papers')}
      columns={[
        { head: say('delivery-note') },
        { head: say('papers-issued') },
        { head: say('papers-standing') },
        { head: say('dispatch-copy') },
      ]}
      rows={view.notes.map((note) => ({
        key: note.paperId,
        cells: [
          <a href={`/papers/${note.paperId}/file`}>
            {note.number}, {say('note-version', { version: note.version })}
          </a>,
          localText(note.issuedAt, viewer.timeZone),
          note.isVoid ? say('papers-void', { reason: note.voidReason ?? '–' }) : say('papers-good'),
          <a href={`/papers/${note.paperId}/copy`}>{say('dispatch-copy-print')}</a>,
        ],
      }))}
    />
  );
}

function Returned({ loading: { view } }: { readonly loading: LoadingView }): VNode | null {
  if (view.returned.length === 0) return null;
  return (
    <Table
      caption={say('dispatch-returned')}
      columns={[
        { head: say('delivery-unit'), align: 'code' },
        { head: say('return-count'), align: 'number' },
        { head: say('return-credited'), align: 'number' },
        { head: say('return-why') },
        { head: say('return-place') },
        { head: say('return-fate') },
      ]}
      rows={view.returned.map((row) => ({
        key: row.id,
        cells: [
          row.name,
          countText(row.unitCount),
          countText(row.creditedCount),
          say(`return-${row.why}`),
          row.placeCode,
          row.fate === null ? say('return-undecided') : say(`fate-${row.fate}`),
        ] satisfies ComponentChildren[],
      }))}
    />
  );
}
