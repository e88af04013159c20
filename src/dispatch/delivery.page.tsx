import type { VNode } from 'preact';
import { kilograms, printedDay, printedSscc, thousands } from '../platform/printing/printed-figures.js';
import { say } from '../platform/sentences/sentences.js';
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
      {deliveries.length === 0 ? (
        <p>{say('nothing-here')}</p>
      ) : (
        <div class="table-wrap" tabIndex={0} role="region" aria-label={say('deliveries-title')}>
          <table>
            <caption>{say('deliveries-caption')}</caption>
            <thead>
              <tr>
                <th scope="col">{say('delivery-order')}</th>
                <th scope="col">{say('delivery-customer')}</th>
                <th scope="col">{say('delivery-planned')}</th>
                <th scope="col">{say('delivery-status')}</th>
                <th scope="col">{say('delivery-units')}</th>
                <th scope="col">{say('delivery-note')}</th>
              </tr>
            </thead>
            <tbody>
              {deliveries.map((delivery) => (
                <tr key={delivery.id}>
                  <th scope="row">
                    <a href={`/deliveries/${delivery.id}`}>{delivery.orderNumber}</a>
                  </th>
                  <td>{delivery.customerName ?? delivery.customerCode}</td>
                  <td>{printedDay(delivery.plannedOn)}</td>
                  <td>{say(`delivery-now-${delivery.status}`)}</td>
                  <td class="number">{delivery.loadedCount}</td>
                  <td>{delivery.noteNumber ?? '–'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
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
        {delivery.customerName ?? delivery.customerCode} · {say(`delivery-now-${delivery.status}`)}
        {delivery.noteNumber === null ? '' : ` · ${delivery.noteNumber}`}
      </p>
      <dl class="figures">
        <Figure name={say('delivery-planned')} value={printedDay(delivery.plannedOn)} />
        {delivery.closedAt === null ? null : (
          <Figure name={say('delivery-left')} value={localText(delivery.closedAt, viewer.timeZone)} />
        )}
        {delivery.seal === null ? null : <Figure name={say('delivery-seal')} value={delivery.seal} />}
      </dl>
      <p>
        <a href={`/thread?code=${delivery.noteNumber ?? delivery.id}`}>{say('delivery-to-thread')}</a>
      </p>
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

function Figure({ name, value }: { readonly name: string; readonly value: string }): VNode {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}

function Lines({ delivery }: { readonly delivery: DeliveryView }): VNode {
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={say('delivery-lines')}>
      <table>
        <caption>{say('delivery-lines')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('delivery-goods')}</th>
            <th scope="col">{say('delivery-need')}</th>
            <th scope="col">{say('delivery-on')}</th>
            <th scope="col">{say('delivery-left-over')}</th>
          </tr>
        </thead>
        <tbody>
          {delivery.lines.map((line) => (
            <tr key={line.id}>
              <th scope="row">
                {line.name}
                {line.formatId === null ? ` (${say('delivery-whole-bags')})` : ''}
              </th>
              <td class="number">{thousands(line.orderedCount)}</td>
              <td class="number">{thousands(line.loadedCount)}</td>
              <td class="number">{thousands(line.leftCount)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
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
  if (delivery.units.length === 0) return <p>{say('delivery-nothing-on')}</p>;
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={say('delivery-what-is-on')}>
      <table>
        <caption>{say('delivery-what-is-on')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('delivery-place')}</th>
            <th scope="col">{say('delivery-unit')}</th>
            <th scope="col">{say('delivery-goods')}</th>
            <th scope="col">{say('delivery-lots')}</th>
            <th scope="col">{say('delivery-packs')}</th>
            <th scope="col">{say('delivery-net')}</th>
            <th scope="col">{say('delivery-loaded-at')}</th>
          </tr>
        </thead>
        <tbody>
          {delivery.units.map((unit) => (
            <tr key={unit.id}>
              <td class="number">{unit.place}</td>
              <th scope="row">
                {unit.kind === 'pallet' ? (
                  <a href={`/pallets/${unit.id}`}>{printedSscc(unit.name)}</a>
                ) : (
                  <a href={`/bags/${unit.id}`}>{unit.name}</a>
                )}
              </th>
              <td>{unit.kind === 'pallet' ? unit.goods : say('delivery-whole-bag')}</td>
              <td>{unit.lots.join(', ')}</td>
              <td class="number">{unit.packCount === null ? '–' : thousands(unit.packCount)}</td>
              <td class="number">{kilograms(unit.netGrams)}</td>
              <td>{localText(unit.loadedAt, viewer.timeZone)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
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
