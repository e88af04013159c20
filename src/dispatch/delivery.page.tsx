import type { VNode } from 'preact';
import { HoldLink } from '../disposition/hold-link.js';
import { kilograms, printedDay, printedSscc, thousands } from '../platform/printing/printed-figures.js';
import { say } from '../platform/sentences/sentences.js';
import { ActLink } from '../platform/web/kit/act.js';
import { Figures } from '../platform/web/kit/figures.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import type { DeliveryRow } from './delivery-rows.js';
import type { DeliveryView } from './delivery-views.js';

interface DeliveryListProps {
  readonly viewer: Viewer;
  readonly deliveries: readonly DeliveryRow[];
  readonly older: string | null;
}

/** The deliveries of the site, newest first. */
export function deliveryListPage({ viewer, deliveries, older }: DeliveryListProps): VNode {
  return (
    <Shell title={say('deliveries-title')} viewer={viewer}>
      <p class="caution">{say('caution-vehicles')}</p>
      <Table
        caption={say('deliveries-caption')}
        columns={[
          { head: say('delivery-order') },
          { head: say('delivery-customer') },
          { head: say('delivery-planned') },
          { head: say('delivery-status') },
          { head: say('delivery-units'), align: 'number' },
          { head: say('delivery-note') },
        ]}
        rows={deliveries.map((delivery) => ({
          key: delivery.id,
          cells: [
            <a href={`/deliveries/${delivery.id}`}>{delivery.orderNumber}</a>,
            delivery.customerName ?? delivery.customerCode,
            printedDay(delivery.plannedOn),
            say(`delivery-now-${delivery.status}`),
            delivery.loadedCount,
            delivery.noteNumber ?? '–',
          ],
        }))}
      />
      <OlderEntries path="/deliveries" older={older} />
    </Shell>
  );
}

interface DeliveryProps {
  readonly viewer: Viewer;
  readonly delivery: DeliveryView;
}

/** One delivery: what is needed, on and left; the vehicle; what is on it; its papers. */
export function deliverySinglePage({ viewer, delivery }: DeliveryProps): VNode {
  return (
    <Shell title={say('delivery-title', { order: delivery.orderNumber })} viewer={viewer}>
      <p class="sentence">
        <a href={`/customers/${delivery.customerId}`}>{delivery.customerName ?? delivery.customerCode}</a> ·{' '}
        {say(`delivery-now-${delivery.status}`)}
        {delivery.noteNumber === null ? '' : ` · ${delivery.noteNumber}`}
      </p>
      <Figures
        of={[
          { label: say('delivery-planned'), value: printedDay(delivery.plannedOn) },
          ...(delivery.closedAt === null
            ? []
            : [{ label: say('delivery-left'), value: localText(delivery.closedAt, viewer.timeZone) }]),
          ...(delivery.seal === null ? [] : [{ label: say('delivery-seal'), value: delivery.seal }]),
        ]}
      />
      <div class="acts">
        <ActLink href={`/thread?code=${delivery.noteNumber ?? delivery.id}`} says={say('delivery-to-thread')} />
        <HoldLink viewer={viewer} kind="delivery" id={delivery.id} />
      </div>
      <Lines delivery={delivery} />
      {delivery.shortReason === null ? null : <p>{say('delivery-short', { reason: delivery.shortReason })}</p>}
      <Vehicle delivery={delivery} viewer={viewer} />
      <Units delivery={delivery} viewer={viewer} />
      <Papers delivery={delivery} viewer={viewer} />
      <p class="caution">{say('caution-vehicles')}</p>
      <p class="caution">{say('caution-legal-weights')}</p>
    </Shell>
  );
}

function Lines({ delivery }: { readonly delivery: DeliveryView }): VNode {
  return (
    <Table
      caption={say('delivery-lines')}
      columns={[
        { head: say('delivery-goods') },
        { head: say('delivery-need'), align: 'number' },
        { head: say('delivery-on'), align: 'number' },
        { head: say('delivery-left-over'), align: 'number' },
      ]}
      rows={delivery.lines.map((line) => ({
        key: line.id,
        cells: [
          `${line.name}${line.formatId === null ? ` (${say('delivery-whole-bags')})` : ''}`,
          thousands(line.orderedCount),
          thousands(line.loadedCount),
          thousands(line.leftCount),
        ],
      }))}
    />
  );
}

function Vehicle({ delivery, viewer }: DeliveryProps): VNode {
  const { check } = delivery;
  const texts = new Map(delivery.checkPoints.map(({ code, text }) => [code, text]));
  return (
    <section class="card" aria-labelledby="vehicle">
      <h2 id="vehicle">{say('delivery-vehicle')}</h2>
      {check === null ? (
        <p>{say('delivery-vehicle-unchecked')}</p>
      ) : (
        <>
          <p>
            {say(check.passed ? 'delivery-vehicle-passed' : 'delivery-vehicle-failed', {
              registration: check.registration,
              haulier: check.haulierCode,
              at: localText(check.checkedAt, viewer.timeZone),
            })}
          </p>
          <ul>
            {check.answers.map(({ point, isFine }) => (
              <li key={point}>
                {texts.get(point) ?? point}: {say(isFine ? 'delivery-yes' : 'delivery-no')}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Units({ delivery, viewer }: DeliveryProps): VNode {
  return (
    <Table
      caption={say('delivery-what-is-on')}
      columns={[
        { head: say('delivery-unit') },
        { head: say('delivery-place'), align: 'number' },
        { head: say('delivery-goods') },
        { head: say('delivery-lots'), align: 'code' },
        { head: say('delivery-packs'), align: 'number' },
        { head: say('delivery-net'), align: 'number' },
        { head: say('delivery-loaded-at') },
      ]}
      rows={delivery.units.map((unit) => ({
        key: unit.id,
        cells: [
          unit.kind === 'pallet' ? (
            <a href={`/pallets/${unit.id}`}>{printedSscc(unit.name)}</a>
          ) : (
            <a href={`/bags/${unit.id}`}>{unit.name}</a>
          ),
          unit.place,
          unit.kind === 'pallet' ? unit.goods : say('delivery-whole-bag'),
          unit.lots.join(', '),
          unit.packCount === null ? '–' : thousands(unit.packCount),
          kilograms(unit.netGrams),
          localText(unit.loadedAt, viewer.timeZone),
        ],
      }))}
      empty={say('delivery-nothing-on')}
    />
  );
}

function Papers({ delivery, viewer }: DeliveryProps): VNode | null {
  if (delivery.notes.length === 0) return null;
  return (
    <section>
      <h2>{say('delivery-papers')}</h2>
      <ul>
        {delivery.notes.map((note) => (
          <li key={note.paperId}>
            <a href={`/papers/${note.paperId}/file`}>
              {say('note-title')} {note.number}
            </a>
            , {say('note-version', { version: note.version })}, {localText(note.issuedAt, viewer.timeZone)}
            {note.isVoid ? ` · ${say('papers-void', { reason: note.voidReason ?? '–' })}` : ''}
          </li>
        ))}
      </ul>
    </section>
  );
}
