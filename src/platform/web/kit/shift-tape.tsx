import type { VNode } from 'preact';
import { say } from '../../sentences/sentences.js';
import { clockText } from '../local-text.js';

/** Something that happened on a row of the tape, or is due. */
export interface TapeMark {
  /** `tick` and the circles stand at a time; `run`, `stop` and `block` last. */
  readonly kind: 'tick' | 'late' | 'run' | 'stop' | 'block' | 'due' | 'done' | 'failed';
  readonly at: string;
  readonly untilAt?: string | null | undefined;
  /** Shown beside it: last digits, a reason. */
  readonly text?: string | undefined;
}

export interface TapeRow {
  readonly label: string;
  readonly marks: readonly TapeMark[];
}

interface ShiftTapeProps {
  readonly says: string;
  readonly fromAt: string;
  readonly untilAt: string;
  readonly nowAt: string;
  readonly timeZone: string;
  readonly rows: readonly TapeRow[];
}

const width = 960;
const labels = 110;
const rowHeight = 36;
const top = 26;

/** What happened when: a row each for hoppers, lines, checks and pallets over one shift. The table beneath says the same. */
export function ShiftTape({ says, fromAt, untilAt, nowAt, timeZone, rows }: ShiftTapeProps): VNode {
  const from = Date.parse(fromAt);
  const long = Math.max(1, Date.parse(untilAt) - from);
  const x = (at: string): number => {
    const share = (Date.parse(at) - from) / long;
    return Math.round(labels + Math.min(1, Math.max(0, share)) * (width - labels - 10));
  };
  const bottom = top + rows.length * rowHeight;
  return (
    <>
      <svg class="picture tape" viewBox={`0 0 ${width} ${bottom + 6}`} role="img" aria-label={says}>
        {hours(fromAt, untilAt, timeZone).map(({ at, label }) => (
          <g key={at}>
            <path class="line" d={`M${x(at)} ${top - 6} V${bottom}`} />
            <text x={x(at)} y={top - 10} text-anchor={x(at) > width - 40 ? 'end' : 'start'}>
              {label}
            </text>
          </g>
        ))}
        {rows.map((row, place) => (
          <g key={row.label}>
            <text x="4" y={top + place * rowHeight + 23}>
              {row.label}
            </text>
            {withRoom(row.marks, x).map((mark, number) => (
              <Mark key={number} mark={mark} x={x} y={top + place * rowHeight} until={mark.untilAt ?? nowAt} />
            ))}
          </g>
        ))}
        <path class="strong" d={`M${x(nowAt)} ${top - 20} V${bottom}`} />
      </svg>
      <TapeTable rows={rows} timeZone={timeZone} />
    </>
  );
}

const letterWidth = 9;

/** Marks whose texts would run into each other keep only those that have room, the latest first; the table has them all. */
function withRoom(marks: readonly TapeMark[], x: (at: string) => number): readonly TapeMark[] {
  let free = Infinity;
  const latestFirst = [...marks].sort((one, other) => x(other.at) - x(one.at));
  return latestFirst.map((mark) => {
    if (mark.text === undefined) return mark;
    const from = x(mark.at);
    if (from + (mark.text.length + 1) * letterWidth > free) return { ...mark, text: undefined };
    free = from;
    return mark;
  });
}

interface MarkProps {
  readonly mark: TapeMark;
  readonly x: (at: string) => number;
  readonly y: number;
  readonly until: string;
}

function Mark({ mark, x, y, until }: MarkProps): VNode {
  const at = x(mark.at);
  const long = Math.max(3, x(until) - at);
  const text =
    mark.text === undefined ? null : (
      <text x={at + 4} y={y + 34}>
        {mark.text}
      </text>
    );
  switch (mark.kind) {
    case 'run':
      return <rect class="part part-2" x={at} y={y + 8} width={long} height="14" />;
    case 'block':
      return <rect class="open" x={at - 6} y={y + 8} width="12" height="14" />;
    case 'stop':
      return (
        <g>
          <rect class="open" x={at} y={y + 8} width={long} height="14" />
          {text}
        </g>
      );
    case 'due':
      return <circle class="open" cx={at} cy={y + 15} r="7" />;
    case 'done':
      return <circle class="part part-0" cx={at} cy={y + 15} r="7" />;
    case 'failed':
      return <rect class="failed" x={at - 8} y={y + 7} width="16" height="16" />;
    case 'late':
    case 'tick':
      return (
        <g>
          <path class={mark.kind === 'late' ? 'ghost' : 'strong'} d={`M${at} ${y + 6} V${y + 24}`} />
          {text}
        </g>
      );
  }
}

/** Every full hour, by the plant's clock; the hour that comes twice is marked. */
function hours(fromAt: string, untilAt: string, timeZone: string): readonly { at: string; label: string }[] {
  const marks: { at: string; label: string }[] = [];
  const first = Math.ceil(Date.parse(fromAt) / 3_600_000) * 3_600_000;
  for (let at = first; at <= Date.parse(untilAt); at += 3_600_000) {
    const instant = new Date(at).toISOString();
    const clock = clockText(instant, timeZone).slice(0, 2);
    const isAgain = marks.at(-1)?.label === clock;
    marks.push({ at: instant, label: isAgain ? `${clock}\u2032` : clock });
  }
  return marks;
}

function TapeTable({ rows, timeZone }: { readonly rows: readonly TapeRow[]; readonly timeZone: string }): VNode {
  return (
    <details class="tape-table">
      <summary>{say('tape-in-words')}</summary>
      <ul>
        {rows.map((row) => (
          <li key={row.label}>
            <strong>{row.label}</strong>{' '}
            {row.marks
              .map(
                ({ kind, at, text }) =>
                  `${clockText(at, timeZone)} ${say(`tape-${kind}`)}${text === undefined ? '' : ` ${text}`}`,
              )
              .join(', ')}
          </li>
        ))}
      </ul>
    </details>
  );
}
