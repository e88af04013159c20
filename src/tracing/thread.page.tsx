import type { VNode } from 'preact';
import { formatKilograms } from '../core/units/grams.js';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark, type MarkedState } from '../platform/web/state-mark.js';
import type { Amounts, LineEvent, PackedPart, PalletLine, ShiftName, SourceLine, Thread } from './thread.js';

/** Kilograms to the gram, so that columns stand under each other. */
function kilograms(grams: number): string {
  return formatKilograms(grams, { minimumDecimals: 3, thousands: true }).replace(/ kg$/, '');
}

interface ThreadPageProps {
  readonly viewer: Viewer;
  readonly thread: Thread;
  /** The search box, so that the next code can be typed at once. */
  readonly searchBox: VNode;
}

/** The thread of one thing: where it came from, what is known of that, and where else the same sugar went. */
export function threadPage({ viewer, thread, searchBox }: ThreadPageProps): VNode {
  const { subject } = thread;
  const title = say(`thread-title-${subject.kind}`, { name: subject.name, at: subject.localTime ?? '' });
  return (
    <Shell title={title} viewer={viewer}>
      {searchBox}
      <section class="card" aria-labelledby="answer">
        <h2 id="answer">{say('thread-answer')}</h2>
        <p class="sentence">{answerSentence(thread)}</p>
        <Figures thread={thread} />
      </section>
      <Packed parts={thread.packed} timeZone={viewer.timeZone} />
      <Sources caption="thread-sources" sources={thread.sources.filter((source) => source.word !== 'possible')} />
      <Sources
        caption="thread-sources-possible"
        sources={thread.sources.filter((source) => source.word === 'possible')}
      />
      <Pallets caption="thread-pallets" pallets={thread.pallets.filter((pallet) => pallet.word !== 'possible')} />
      <Pallets
        caption="thread-pallets-possible"
        pallets={thread.pallets.filter((pallet) => pallet.word === 'possible')}
      />
      <Customers thread={thread} />
      <LineEvents events={thread.lineEvents} timeZone={viewer.timeZone} />
      <p class="quiet">{basis(thread, viewer.timeZone)}</p>
    </Shell>
  );
}

const shiftText = (shift: ShiftName): string => say('thread-shift', { on: shift.productionOn, shift: shift.shiftCode });

function distinctShifts(shifts: readonly ShiftName[]): string[] {
  return [...new Set(shifts.map(shiftText))];
}

function answerSentence(thread: Thread): string {
  const packing = distinctShifts(thread.packed.flatMap((part) => part.packingShifts));
  const sure = thread.sources.filter((source) => source.word === 'sure').length;
  const away = thread.pallets.filter((pallet) => pallet.status === 'dispatched').length;
  return say('thread-sentence', {
    packing: packing.length === 0 ? say('thread-not-packed') : packing.join(', '),
    dryers: [...new Set(thread.dryerShifts.map(shiftText))].join(', ') || say('thread-no-dryer-shift'),
    bags: thread.sources.length,
    sure,
    pallets: thread.pallets.length,
    away,
    customers: thread.customers.length,
  });
}

function Figures({ thread }: { readonly thread: Thread }): VNode {
  const { lowerGrams, grams, upperGrams } = thread.subjectGrams;
  const likely = thread.sources.reduce((sum, source) => sum + source.likelyGrams, 0);
  return (
    <dl class="figures">
      <div>
        <dt>{say('thread-sugar-in-it')}</dt>
        <dd>{say('thread-kilograms', { grams: kilograms(grams) })}</dd>
        <dd class="quiet">{say('thread-between', { lower: kilograms(lowerGrams), upper: kilograms(upperGrams) })}</dd>
      </div>
      <div>
        <dt>{say('thread-likely-of-bags')}</dt>
        <dd>{say('thread-kilograms', { grams: kilograms(likely) })}</dd>
      </div>
      <div>
        <dt>{say('thread-not-explained')}</dt>
        <dd>{say('thread-kilograms', { grams: kilograms(Math.max(0, grams - likely)) })}</dd>
      </div>
    </dl>
  );
}

function Packed({
  parts,
  timeZone,
}: {
  readonly parts: readonly PackedPart[];
  readonly timeZone: string;
}): VNode | null {
  if (parts.length === 0) return null;
  return (
    <ThreadTable
      caption={say('thread-packed')}
      heads={['thread-packing-shift', 'thread-run', 'thread-code', 'thread-when', 'thread-packs']}
      numbers={[4]}
    >
      {parts.map((part) => (
        <tr key={`${part.runId} ${part.fromCount}`}>
          <td>{distinctShifts(part.packingShifts).join(', ')}</td>
          <td>
            <a href={threadLink(part.runNumber)}>{part.runNumber}</a>
            <br />
            <small>{say('thread-line', { line: part.lineCode, format: part.formatName })}</small>
          </td>
          <td class="code">{part.lotCode ?? say('thread-no-code')}</td>
          <td>
            {part.when === null
              ? say('thread-not-counted')
              : say('thread-from-until', {
                  from: localText(part.when.fromAt, timeZone),
                  until: localText(part.when.untilAt, timeZone),
                })}
          </td>
          <td class="number">
            {part.toCount - part.fromCount}
            <br />
            <small>{say('thread-counts', { from: part.fromCount + 1, to: part.toCount })}</small>
          </td>
        </tr>
      ))}
    </ThreadTable>
  );
}

interface SourcesProps {
  /** Code of the caption. */
  readonly caption: string;
  readonly sources: readonly SourceLine[];
}

/** The surest first; what is only possible stands in a table of its own, below. */
function Sources({ caption, sources }: SourcesProps): VNode | null {
  if (sources.length === 0) return null;
  return (
    <ThreadTable
      caption={say(caption, { count: sources.length })}
      heads={[
        'thread-bag',
        'thread-dryer-shift',
        'thread-least',
        'thread-likely',
        'thread-most',
        'thread-results',
        'thread-state',
      ]}
      numbers={[2, 3, 4]}
    >
      {sources.map((source) => (
        <tr key={source.bagId}>
          <td>
            <a class="code" href={threadLink(source.bagNumber)}>
              {source.bagNumber}
            </a>
            <br />
            <small>{source.netGrams === null ? '' : say('thread-net', { net: kilograms(source.netGrams) })}</small>
          </td>
          <td>
            {source.dryerShift === null
              ? (source.supplierLot ?? say('thread-no-dryer-shift'))
              : say('thread-dryer-and-shift', { dryer: source.dryerCode, shift: shiftText(source.dryerShift) })}
          </td>
          <AmountCells amounts={source} />
          <td>
            {source.results.length === 0 ? <span>{say('thread-no-result')}</span> : null}
            {source.results.map((result) => (
              <div key={result.id}>
                {say('thread-result', {
                  property: say(`property-${result.property}`),
                  amount: result.amount,
                  method: result.method,
                })}
              </div>
            ))}
          </td>
          <td>
            <StateMark state={stateOf(source)} />
            {source.isDoubtful ? (
              <div>
                <StateMark state="doubtful" />
              </div>
            ) : null}
          </td>
        </tr>
      ))}
    </ThreadTable>
  );
}

function stateOf(source: SourceLine): MarkedState {
  if (source.isOnHold) return 'on-hold';
  const known: readonly MarkedState[] = ['waiting', 'released', 'rejected', 'concession'];
  return known.find((state) => state === source.decision) ?? 'waiting';
}

interface PalletsProps {
  /** Code of the caption. */
  readonly caption: string;
  readonly pallets: readonly PalletLine[];
}

function Pallets({ caption, pallets }: PalletsProps): VNode | null {
  if (pallets.length === 0) return null;
  return (
    <ThreadTable
      caption={say(caption, { count: pallets.length })}
      heads={[
        'thread-pallet',
        'thread-code',
        'thread-packs',
        'thread-least',
        'thread-likely',
        'thread-most',
        'thread-where',
        'thread-customer',
      ]}
      numbers={[2, 3, 4, 5]}
    >
      {pallets.map((pallet) => (
        <tr key={pallet.palletId}>
          <td>
            <a class="code" href={threadLink(pallet.sscc)}>
              {pallet.sscc}
            </a>
            {pallet.isSubject ? (
              <small>
                <br />
                {say('thread-holds-subject')}
              </small>
            ) : null}
          </td>
          <td class="code">{pallet.lotCodes.join(', ')}</td>
          <td class="number">{pallet.packCount}</td>
          <AmountCells amounts={pallet} />
          <td>
            {say(`pallet-is-${pallet.status}`)}
            {pallet.placeCode === null ? '' : ` · ${pallet.placeCode}`}
          </td>
          <td>
            {pallet.customerName}
            {pallet.deliveryNumber === null ? null : (
              <small>
                <br />
                <a href={threadLink(pallet.deliveryNumber)}>{pallet.deliveryNumber}</a>
              </small>
            )}
          </td>
        </tr>
      ))}
    </ThreadTable>
  );
}

function AmountCells({ amounts }: { readonly amounts: Amounts }): VNode {
  return (
    <>
      <td class="number">{kilograms(amounts.leastGrams)}</td>
      <td class="number">{kilograms(amounts.likelyGrams)}</td>
      <td class="number">
        {kilograms(amounts.mostGrams)}
        <br />
        <small>{say(`link-${amounts.word}`)}</small>
      </td>
    </>
  );
}

function Customers({ thread }: { readonly thread: Thread }): VNode | null {
  if (thread.customers.length === 0) return null;
  return (
    <ThreadTable
      caption={say('thread-customers')}
      heads={['thread-customer', 'thread-deliveries', 'thread-pallet-count', 'thread-packs', 'thread-bag-count']}
      numbers={[2, 3, 4]}
    >
      {thread.customers.map((customer) => (
        <tr key={customer.customerId}>
          <td>{customer.customerName}</td>
          <td>
            {customer.deliveryNumbers.map((number, place) => (
              <span key={number}>
                {place === 0 ? '' : ', '}
                <a href={threadLink(number)}>{number}</a>
              </span>
            ))}
          </td>
          <td class="number">{customer.palletCount}</td>
          <td class="number">{customer.packCount}</td>
          <td class="number">{customer.bagCount}</td>
        </tr>
      ))}
    </ThreadTable>
  );
}

/** A reason in the reader's words; what film it was stands as it is. */
function eventText({ kind, says }: LineEvent): string {
  if (kind === 'film') return says;
  return say(kind === 'stop' ? `stop-reason-${says}` : `removal-reason-${says}`);
}

function LineEvents({
  events,
  timeZone,
}: {
  readonly events: readonly LineEvent[];
  readonly timeZone: string;
}): VNode | null {
  if (events.length === 0) return null;
  return (
    <ThreadTable
      caption={say('thread-near-it')}
      heads={['thread-when', 'thread-what', 'thread-kilograms-head']}
      numbers={[2]}
    >
      {events.map((event) => (
        <tr key={`${event.kind} ${event.at} ${event.says}`}>
          <td>{localText(event.at, timeZone)}</td>
          <td>
            {say(`line-event-${event.kind}`)}: {eventText(event)}
          </td>
          <td class="number">{event.grams === null ? '' : kilograms(event.grams)}</td>
        </tr>
      ))}
    </ThreadTable>
  );
}

interface ThreadTableProps {
  readonly caption: string;
  /** Codes of the column heads. */
  readonly heads: readonly string[];
  /** Columns of numbers, from 0. */
  readonly numbers?: readonly number[];
  readonly children: VNode | readonly VNode[];
}

function ThreadTable({ caption, heads, numbers = [], children }: ThreadTableProps): VNode {
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={caption}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {heads.map((head, place) => (
              <th key={head} scope="col" class={numbers.includes(place) ? 'number' : undefined}>
                {say(head)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </div>
  );
}

function threadLink(code: string): string {
  return `/thread?code=${encodeURIComponent(code)}`;
}

function basis(thread: Thread, timeZone: string): string {
  return say('thread-basis', {
    model: thread.model === null ? '–' : say(`flow-${thread.model.name}`),
    permille: thread.model?.likelyPermille ?? 0,
    at: localText(thread.readAt, timeZone),
  });
}
