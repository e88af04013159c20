import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import { distinctShifts, gramPreciseText, threadLink } from './thread-text.js';
import type { LineEvent, PackedPart } from './thread.js';

/** Where and when the subject was packed. */
export function Packed({
  parts,
  timeZone,
}: {
  readonly parts: readonly PackedPart[];
  readonly timeZone: string;
}): VNode | null {
  if (parts.length === 0) return null;
  return (
    <Table
      caption={say('thread-packed')}
      columns={[
        { head: say('thread-packing-shift') },
        { head: say('thread-run') },
        { head: say('thread-code'), align: 'code' },
        { head: say('thread-when') },
        { head: say('thread-packs'), align: 'number' },
      ]}
      rows={parts.map((part) => ({
        key: `${part.runId} ${part.fromCount}`,
        cells: [
          distinctShifts(part.packingShifts).join(', '),
          <span key="run">
            <a href={threadLink(part.runNumber)}>{part.runNumber}</a>
            <br />
            <small>{say('thread-line', { line: part.lineCode, format: part.formatName })}</small>
          </span>,
          part.lotCode === null ? (
            say('thread-no-code')
          ) : (
            <a key="lot" href={threadLink(part.lotCode)}>
              {part.lotCode}
            </a>
          ),
          whenText(part, timeZone),
          <span key="packs">
            {part.toCount - part.fromCount}
            <br />
            <small>{say('thread-counts', { from: part.fromCount + 1, to: part.toCount })}</small>
          </span>,
        ],
      }))}
    />
  );
}

function whenText({ when }: PackedPart, timeZone: string): string {
  if (when === null) return say('thread-not-counted');
  const [from, until] = [localText(when.fromAt, timeZone), localText(when.untilAt, timeZone)];
  return say('thread-from-until', { from, until });
}

/** What happened on the line meanwhile. */
export function LineEvents({
  events,
  timeZone,
}: {
  readonly events: readonly LineEvent[];
  readonly timeZone: string;
}): VNode | null {
  if (events.length === 0) return null;
  return (
    <Table
      caption={say('thread-near-it')}
      columns={[
        { head: say('thread-when') },
        { head: say('thread-what') },
        { head: say('thread-kilograms-head'), align: 'number' },
      ]}
      rows={events.map((event) => ({
        key: `${event.kind} ${event.at} ${event.says}`,
        cells: [
          localText(event.at, timeZone),
          <span key="what">
            {say(`line-event-${event.kind}`)}: <EventText event={event} />
          </span>,
          event.grams === null ? '' : gramPreciseText(event.grams),
        ],
      }))}
    />
  );
}

/** A reason in the reader's words; a film is known by its code, which leads to its thread. */
function EventText({ event }: { readonly event: LineEvent }): VNode {
  const { kind, says } = event;
  const [code = ''] = says.split(' ');
  if (kind === 'film') return <a href={threadLink(code)}>{says}</a>;
  return <>{say(kind === 'stop' ? `stop-reason-${says}` : `removal-reason-${says}`)}</>;
}
