import type { VNode } from 'preact';
import { kilograms, printedSscc, roundKilograms, thousands } from '../platform/printing/printed-figures.js';
import { say } from '../platform/sentences/sentences.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark } from '../platform/web/state-mark.js';
import type { PalletRow } from './pallet-rows.js';
import type { PalletView } from './pallet-views.js';

interface PalletListProps {
  readonly viewer: Viewer;
  readonly pallets: readonly PalletRow[];
  readonly older: string | null;
}

/** The pallets of the site, newest first. How one stands is computed on its own page. */
export function palletListPage({ viewer, pallets, older }: PalletListProps): VNode {
  return (
    <Shell title={say('pallets-title')} viewer={viewer}>
      <p class="quiet">{say('pallets-says')}</p>
      <p class="caution">{say('caution-pallets')}</p>
      {pallets.length === 0 ? (
        <p>{say('nothing-here')}</p>
      ) : (
        <div class="table-wrap" tabIndex={0} role="region" aria-label={say('pallets-title')}>
          <table>
            <caption>{say('pallets-caption')}</caption>
            <thead>
              <tr>
                <th scope="col">SSCC</th>
                <th scope="col">{say('pallets-format')}</th>
                <th scope="col">{say('pallets-packs')}</th>
                <th scope="col">{say('pallets-where')}</th>
                <th scope="col">{say('pallets-built')}</th>
              </tr>
            </thead>
            <tbody>
              {pallets.map((pallet) => (
                <tr key={pallet.id}>
                  <th scope="row">
                    <a href={`/pallets/${pallet.id}`}>{printedSscc(pallet.sscc)}</a>
                  </th>
                  <td>{pallet.formatName}</td>
                  <td class="number">
                    {thousands(pallet.packCount)}
                    {pallet.isFull ? '' : ` (${say('pallets-part')})`}
                  </td>
                  <td>{say(`pallet-is-${pallet.status}`)}</td>
                  <td>{localText(pallet.builtAt, viewer.timeZone)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <OlderEntries path="/pallets" older={older} />
    </Shell>
  );
}

interface PalletSingleProps {
  readonly viewer: Viewer;
  readonly pallet: PalletView;
}

/** One pallet: what stands on it, how it stands and why, and the bags whose sugar may be in it. */
export function palletSinglePage({ viewer, pallet }: PalletSingleProps): VNode {
  return (
    <Shell title={say('pallet-title', { sscc: printedSscc(pallet.sscc) })} viewer={viewer}>
      <p class="sentence">
        <StateMark state={pallet.standing.state} /> {say(`pallet-is-${pallet.status}`)}
        {pallet.placeCode === null ? '' : ` · ${pallet.placeCode}`}
      </p>
      <Reasons pallet={pallet} />
      <dl class="figures">
        <Figure name={say('pallets-format')} value={pallet.formatName} />
        <Figure name={say('pallets-packs')} value={thousands(pallet.packCount)} />
        <Figure name={say('pallet-net')} value={`${kilograms(pallet.netGrams)} kg`} />
        <Figure name={say('pallet-gross')} value={`${roundKilograms(pallet.grossGrams)} kg`} />
        <Figure name={say('pallets-built')} value={localText(pallet.builtAt, viewer.timeZone)} />
      </dl>
      <p>
        <a href={`/thread?code=${pallet.sscc}`}>{say('pallet-to-thread')}</a>
      </p>
      <Contents pallet={pallet} />
      <Descents pallet={pallet} viewer={viewer} />
      <Bags pallet={pallet} />
      <p class="caution">{say('caution-pallets')}</p>
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

function Reasons({ pallet }: { readonly pallet: PalletView }): VNode {
  const { reasons } = pallet.standing;
  if (reasons.length === 0) return <p>{say('pallet-no-reasons')}</p>;
  return (
    <section class="card" aria-labelledby="why">
      <h2 id="why">{say('pallet-why')}</h2>
      <ul>
        {reasons.map((reason, place) => (
          <li key={place}>{reason.sentence}</li>
        ))}
      </ul>
    </section>
  );
}

function Contents({ pallet }: { readonly pallet: PalletView }): VNode {
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={say('pallet-contents')}>
      <table>
        <caption>{say('pallet-contents')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('pallet-lot')}</th>
            <th scope="col">{say('pallet-run')}</th>
            <th scope="col">{say('pallet-range')}</th>
            <th scope="col">{say('pallets-packs')}</th>
          </tr>
        </thead>
        <tbody>
          {pallet.contents.map((row) => (
            <tr key={`${row.runId} ${row.fromCount}`}>
              <th scope="row">
                <a href={`/thread?code=${encodeURIComponent(row.lotCode)}`}>{row.lotCode}</a>
              </th>
              <td>{row.runNumber}</td>
              <td class="number">
                {say('counts-from-to', { from: thousands(row.fromCount + 1), to: thousands(row.toCount) })}
              </td>
              <td class="number">{thousands(row.toCount - row.fromCount)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Descents({ pallet, viewer }: PalletSingleProps): VNode | null {
  if (pallet.descents.length === 0) return null;
  return (
    <section>
      <h2>{say('pallet-history')}</h2>
      <ul>
        {pallet.descents.map((step) => (
          <li key={`${step.parentId} ${step.childId}`}>
            <a href={`/pallets/${step.parentId}`}>{printedSscc(step.parentSscc)}</a> {say(`descent-${step.how}`)}{' '}
            <a href={`/pallets/${step.childId}`}>{printedSscc(step.childSscc)}</a>,{' '}
            {localText(step.happenedAt, viewer.timeZone)}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Bags({ pallet }: { readonly pallet: PalletView }): VNode | null {
  if (pallet.bags.length === 0) return null;
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={say('pallet-bags')}>
      <table>
        <caption>{say('pallet-bags')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('pallet-bag')}</th>
            <th scope="col">{say('pallet-least')}</th>
            <th scope="col">{say('pallet-likely')}</th>
            <th scope="col">{say('pallet-most')}</th>
            <th scope="col">{say('pallet-word')}</th>
          </tr>
        </thead>
        <tbody>
          {pallet.bags.map((bag) => (
            <tr key={`${bag.bagId} ${bag.periodId}`}>
              <th scope="row">
                <a href={`/thread?code=${encodeURIComponent(bag.bagNumber)}`}>{bag.bagNumber}</a>
              </th>
              <td class="number">{roundKilograms(bag.leastGrams)}</td>
              <td class="number">{roundKilograms(bag.likelyGrams)}</td>
              <td class="number">{roundKilograms(bag.mostGrams)}</td>
              <td>{say(`link-${bag.word}`)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
