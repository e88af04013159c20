import type { VNode } from 'preact';
import { HoldLink } from '../disposition/hold-link.js';
import { kilograms, printedSscc, roundKilograms, thousands } from '../platform/printing/printed-figures.js';
import { say } from '../platform/sentences/sentences.js';
import { ActLink } from '../platform/web/kit/act.js';
import { Figures } from '../platform/web/kit/figures.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark } from '../platform/web/state-mark.js';
import { HeldThing } from './held-thing.js';
import type { PalletRow } from './pallet-rows.js';
import type { HeldBy } from './pallet-standing.js';
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
      <Table
        caption={say('pallets-caption')}
        columns={[
          { head: 'SSCC' },
          { head: say('pallets-format') },
          { head: say('pallets-packs'), align: 'number' },
          { head: say('pallets-where') },
          { head: say('pallets-built') },
        ]}
        rows={pallets.map((pallet) => ({
          key: pallet.id,
          cells: [
            <a href={`/pallets/${pallet.id}`}>{printedSscc(pallet.sscc)}</a>,
            pallet.formatName,
            `${thousands(pallet.packCount)}${pallet.isFull ? '' : ` (${say('pallets-part')})`}`,
            say(`pallet-is-${pallet.status}`),
            localText(pallet.builtAt, viewer.timeZone),
          ],
        }))}
      />
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
      <Figures
        of={[
          { label: say('pallets-format'), value: pallet.formatName },
          { label: say('pallets-packs'), value: thousands(pallet.packCount) },
          { label: say('pallet-net'), value: kilograms(pallet.netGrams), unit: 'kg' },
          { label: say('pallet-gross'), value: roundKilograms(pallet.grossGrams), unit: 'kg' },
          { label: say('pallets-built'), value: localText(pallet.builtAt, viewer.timeZone) },
        ]}
      />
      <div class="acts">
        <ActLink href={`/thread?code=${pallet.sscc}`} says={say('pallet-to-thread')} />
        <HoldLink viewer={viewer} kind="pallet" id={pallet.id} />
      </div>
      <Contents pallet={pallet} />
      <Descents pallet={pallet} viewer={viewer} />
      <Bags pallet={pallet} />
      <p class="caution">{say('caution-pallets')}</p>
    </Shell>
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
          <li key={place}>
            {reason.sentence} {reason.by === undefined ? null : <HoldAndThing {...reason.by} />}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The ways to a hold and to what it was placed on. */
function HoldAndThing({ holdId, hold, kind, id, name }: HeldBy): VNode {
  return (
    <>
      <a href={`/holds/${holdId}`}>{hold}</a> · <HeldThing kind={kind} id={id} name={name} />
    </>
  );
}

function Contents({ pallet }: { readonly pallet: PalletView }): VNode {
  return (
    <Table
      caption={say('pallet-contents')}
      columns={[
        { head: say('pallet-lot'), align: 'code' },
        { head: say('pallet-run') },
        { head: say('pallet-range') },
        { head: say('pallets-packs'), align: 'number' },
      ]}
      rows={pallet.contents.map((row) => ({
        key: `${row.runId} ${row.fromCount}`,
        cells: [
          <a href={`/thread?code=${encodeURIComponent(row.lotCode)}`}>{row.lotCode}</a>,
          <a href={`/runs/${row.runId}`}>{row.runNumber}</a>,
          say('counts-from-to', { from: thousands(row.fromCount + 1), to: thousands(row.toCount) }),
          thousands(row.toCount - row.fromCount),
        ],
      }))}
    />
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
    <Table
      caption={say('pallet-bags')}
      columns={[
        { head: say('pallet-bag') },
        { head: say('pallet-least'), align: 'number' },
        { head: say('pallet-likely'), align: 'number' },
        { head: say('pallet-most'), align: 'number' },
        { head: say('pallet-word') },
      ]}
      rows={pallet.bags.map((bag) => ({
        key: `${bag.bagId} ${bag.periodId}`,
        cells: [
          <a href={`/thread?code=${encodeURIComponent(bag.bagNumber)}`}>{bag.bagNumber}</a>,
          roundKilograms(bag.leastGrams),
          roundKilograms(bag.likelyGrams),
          roundKilograms(bag.mostGrams),
          say(`link-${bag.word}`),
        ],
      }))}
    />
  );
}
