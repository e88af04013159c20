import type { VNode } from 'preact';
import { shifted, type Instant } from '../platform/clock.js';
import { printedSscc } from '../platform/printing/printed-figures.js';
import { say } from '../platform/sentences/sentences.js';
import { countText, kilogramsText } from '../platform/web/figures-text.js';
import { Table } from '../platform/web/kit/table.js';
import type { ChangedReading } from './changed-readings.js';
import type { AmountsOrNone, ChangedPallet, ChangedSource, Ripple } from './ripple.js';
import { localSecondsText } from './thread-text.js';

/** More than this is counted, not listed: sources of one pallet, pallets of one correction, SSCCs of one hold. */
const mostShown = { sources: 3, pallets: 60, ssccs: 12 };

/** What a correction changes, in one sentence, with the bags and holds: all that is needed to decide. */
export function RippleSummary({ ripple }: { readonly ripple: Ripple }): VNode {
  return (
    <>
      <p class="sentence">{rippleSentence(ripple)}</p>
      {ripple.bags.length === 0 ? null : (
        <ul>
          {ripple.bags.map(({ bagId, number, statusBefore, statusAfter }) => (
            <li key={bagId}>
              {say('ripple-bag', { bag: number, before: statusText(statusBefore), after: statusText(statusAfter) })}
            </li>
          ))}
        </ul>
      )}
      <Holds ripple={ripple} />
    </>
  );
}

/** Codes that are read as other times afterwards: what the coder showed, and when that was; now and until now. */
export function RippleReadings({
  ripple,
  timeZone,
}: {
  readonly ripple: Ripple;
  readonly timeZone: string;
}): VNode | null {
  if (ripple.readings.length === 0) return null;
  return (
    <ul>
      {ripple.readings.map((reading) => (
        <li key={`${reading.coderId} ${reading.fromAt}`}>{readingText(reading, timeZone)}</li>
      ))}
    </ul>
  );
}

function readingText(
  { coderCode, lineCode, fromAt, untilAt, before, after }: ChangedReading,
  timeZone: string,
): string {
  const text = (at: Instant | null, aheadSeconds: number): string =>
    at === null ? '' : localSecondsText(shifted(at, aheadSeconds * 1000), timeZone);
  const wrongBy = after.offsetSeconds - before.offsetSeconds;
  return say(untilAt === null ? 'ripple-reading-on' : 'ripple-reading', {
    ...{ coder: coderCode, line: lineCode },
    ...{ shownFrom: text(fromAt, after.offsetSeconds), shownUntil: text(untilAt, after.offsetSeconds) },
    ...{ from: text(fromAt, 0), until: text(untilAt, 0), uncertainty: after.uncertaintySeconds },
    ...{ wasFrom: text(fromAt, wrongBy), wasUntil: text(untilAt, wrongBy), wasUncertainty: before.uncertaintySeconds },
  });
}

/** The same lot by lot and pallet by pallet; what has gone first. */
export function RippleTables({ ripple }: { readonly ripple: Ripple }): VNode {
  const moreCount = ripple.pallets.length - mostShown.pallets;
  return (
    <>
      {ripple.lots.length === 0 ? null : <Lots ripple={ripple} />}
      {ripple.pallets.length === 0 ? null : <Pallets ripple={ripple} />}
      {moreCount > 0 ? <p>{say('ripple-more-pallets', { count: moreCount })}</p> : null}
    </>
  );
}

/** "This changes 2 lots, 14 pallets, 1 delivery already gone", in as many words as there is something to say. */
export function rippleSentence({ lots, pallets, deliveries, byGrams }: Ripple): string {
  if (lots.length + pallets.length === 0) return say('ripple-nothing');
  const gone = deliveries.filter(({ isGone }) => isGone).length;
  const facts = {
    ...{ lots: lots.length, pallets: pallets.length, gone, here: deliveries.length - gone },
    kilograms: kilogramsText(byGrams),
  };
  return `${say('ripple-changes', facts)} ${say(byGrams === 0 ? 'ripple-by-nothing' : 'ripple-by', facts)}`;
}

function statusText(status: string | null): string {
  return say(status === null ? 'ripple-bag-none' : `bag-status-${status}`);
}

function Holds({ ripple }: { readonly ripple: Ripple }): VNode | null {
  if (ripple.holds.length === 0) return null;
  return (
    <section class="card" aria-labelledby="ripple-holds">
      <h2 id="ripple-holds">{say('ripple-holds')}</h2>
      <ul>
        {ripple.holds.flatMap(({ number, reaches, leaves }) => [
          ...(reaches.length === 0 ? [] : [line(`${number} +`, 'ripple-hold-reaches', number, reaches)]),
          ...(leaves.length === 0 ? [] : [line(`${number} -`, 'ripple-hold-leaves', number, leaves)]),
        ])}
      </ul>
    </section>
  );
}

function line(key: string, code: string, hold: string, ssccs: readonly string[]): VNode {
  return (
    <li key={key}>
      {say(code, { hold, count: ssccs.length })}{' '}
      <span class="code">{ssccs.slice(0, mostShown.ssccs).map(printedSscc).join(', ')}</span>
      {ssccs.length > mostShown.ssccs ? ` ${say('ripple-and-more', { count: ssccs.length - mostShown.ssccs })}` : ''}
    </li>
  );
}

function Lots({ ripple }: { readonly ripple: Ripple }): VNode {
  return (
    <Table
      caption={say('ripple-lots')}
      columns={[
        { head: say('ripple-lot'), align: 'code' },
        { head: say('ripple-packs') },
        { head: say('ripple-by-head'), align: 'number' },
        { head: say('ripple-sources') },
      ]}
      rows={ripple.lots.map((lot) => ({
        key: lot.lotId,
        cells: [
          <a href={`/thread?code=${encodeURIComponent(lot.code)}`}>{lot.code}</a>,
          lot.packCountBefore === lot.packCountAfter
            ? countText(lot.packCountAfter)
            : say('ripple-from-to', { before: countText(lot.packCountBefore), after: countText(lot.packCountAfter) }),
          kilogramsText(lot.byGrams),
          <Sources of={lot.sources} isReread={isReread(ripple, lot)} />,
        ],
      }))}
    />
  );
}

function Pallets({ ripple }: { readonly ripple: Ripple }): VNode {
  return (
    <Table
      caption={say('ripple-pallets')}
      columns={[
        { head: say('ripple-pallet'), align: 'code' },
        { head: say('ripple-where') },
        { head: say('ripple-by-head'), align: 'number' },
        { head: say('ripple-sources') },
      ]}
      rows={ripple.pallets.slice(0, mostShown.pallets).map((pallet) => ({
        key: pallet.palletId,
        isLoud: pallet.isGone,
        cells: [
          <a href={`/thread?code=${pallet.sscc}`}>{printedSscc(pallet.sscc)}</a>,
          whereText(pallet),
          kilogramsText(pallet.byGrams),
          <>
            <Changed head="ripple-packs" before={pallet.packsBefore} after={pallet.packsAfter} />
            <Changed head="ripple-lot" before={pallet.lotCodesBefore} after={pallet.lotCodesAfter} />
            <Changed head="ripple-film" before={pallet.filmCodesBefore} after={pallet.filmCodesAfter} />
            <Sources of={pallet.sources} isReread={isReread(ripple, pallet)} />
          </>,
        ],
      }))}
    />
  );
}

function whereText({ status, placeCode, deliveryNumber, customerName }: ChangedPallet): string {
  const where = [deliveryNumber ?? placeCode, customerName].filter((part) => part !== null).join(', ');
  return where === '' ? say(`pallet-is-${status}`) : `${say(`pallet-is-${status}`)}: ${where}`;
}

interface ChangedProps {
  readonly head: string;
  readonly before: readonly string[];
  readonly after: readonly string[];
}

function Changed({ head, before, after }: ChangedProps): VNode | null {
  const [one, other] = [before, after].map((codes) => (codes.length === 0 ? say('ripple-none') : codes.join(', ')));
  if (one === other) return null;
  return (
    <div>
      {say(head)}: {say('ripple-from-to', { before: one ?? '', after: other ?? '' })}
    </div>
  );
}

/** Nothing of its bags changes, and a clock does: then it is here because of the times on its packs. */
function isReread({ readings }: Ripple, { sources }: { readonly sources: readonly ChangedSource[] }): boolean {
  return readings.length > 0 && sources.length === 0;
}

interface SourcesProps {
  readonly of: readonly ChangedSource[];
  readonly isReread: boolean;
}

function Sources({ of: sources, isReread: isOfTimes }: SourcesProps): VNode {
  return (
    <>
      {isOfTimes ? <div>{say('ripple-reread')}</div> : null}
      {sources.slice(0, mostShown.sources).map(({ bagId, bagNumber, before, after }) => (
        <div key={bagId}>
          <span class="code">{bagNumber}</span> {sourceText(before, after)}
        </div>
      ))}
      {sources.length > mostShown.sources ? (
        <div>{say('ripple-and-more', { count: sources.length - mostShown.sources })}</div>
      ) : null}
    </>
  );
}

function sourceText(before: AmountsOrNone, after: AmountsOrNone): string {
  return say('ripple-from-to', { before: amountsText(before), after: amountsText(after) });
}

function amountsText(amounts: AmountsOrNone): string {
  if (amounts === null) return say('ripple-ruled-out');
  const { leastGrams, likelyGrams, mostGrams, word } = amounts;
  return say('ripple-amounts', {
    ...{ word: say(`link-${word}`), likely: kilogramsText(likelyGrams) },
    ...{ least: kilogramsText(leastGrams), most: kilogramsText(mostGrams) },
  });
}
