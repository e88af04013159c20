import { NotTaken } from '../../platform/refusal.js';
import { formPipe } from '../../platform/web/check-form.js';
import { longestLineBytes } from '../incoming/read-weights.js';
import { MessageHeadForm } from './message-head.form.js';

/** A message as it came from the broker. */
export interface RawMessage {
  /** The level of the topic that names the weigher. */
  readonly weigher: string;
  /** What the topic is about: weights of packs, or a check that the weigher made itself. */
  readonly about: 'weights' | 'checks';
  readonly payload: Uint8Array;
  /** The broker had kept it from before (retained). */
  readonly isKept: boolean;
  /** MQTT 5 only. */
  readonly contentType?: string | undefined;
  readonly userProperties?: Readonly<Record<string, string | readonly string[]>> | undefined;
}

/** A message taken apart: what it says of all its lines, and the lines. */
export interface WeightMessage {
  readonly head: MessageHeadForm;
  readonly kind: 'ndjson' | 'csv';
  /** A head that stood in the first line is blanked, so that lines keep their numbers. */
  readonly lines: Uint8Array;
}

/** A message is a small batch: it waits whole in memory, and is read in one go. Our own value, no source. */
export const mostMessageBytes = 1_048_576;

const [brace, newline, space] = [0x7b, 0x0a, 0x20];
const headNames = ['message', 'sentAt', 'line', 'run', 'series', 'lines', 'count'] as const;
const pipe = formPipe();

/**
 * Takes a message apart. Its head stands in the user properties of MQTT 5, or is its first line: an object with `message`.
 *
 * @throws {NotTaken} `message-too-large`, `message-empty`, `message-of-other-type`
 * @throws {BadForm} for a head that cannot be meant
 */
export async function takeApart(raw: RawMessage): Promise<WeightMessage> {
  const { length } = raw.payload;
  if (length > mostMessageBytes)
    throw new NotTaken('too-large', 'message-too-large', { most: mostMessageBytes, length });
  const { said, lines } = headLine(raw.payload);
  const first = lines.find((byte) => byte > space);
  if (first === undefined) throw new NotTaken('bad-body', 'message-empty');
  const head = (await pipe.transform(
    { ...propertiesOf(raw), ...said },
    { type: 'body', metatype: MessageHeadForm },
  )) as MessageHeadForm;
  return { head, kind: kindOf(raw.contentType, first), lines };
}

function kindOf(contentType: string | undefined, first: number): WeightMessage['kind'] {
  const type = (contentType ?? '').split(';')[0]?.trim().toLowerCase() ?? '';
  if (type === '') return first === brace ? 'ndjson' : 'csv';
  if (type === 'application/x-ndjson') return 'ndjson';
  if (type === 'text/csv') return 'csv';
  throw new NotTaken('wrong-type', 'message-of-other-type', { type: type.slice(0, 60) });
}

/** Bridges add properties of their own, so only the names that mean something here are looked at. */
function propertiesOf({ userProperties = {} }: RawMessage): Record<string, unknown> {
  return Object.fromEntries(
    headNames.flatMap((name) => (Object.hasOwn(userProperties, name) ? [[name, userProperties[name]]] : [])),
  );
}

function headLine(payload: Uint8Array): { readonly said: object; readonly lines: Uint8Array } {
  const end = payload.indexOf(newline);
  const nothing = { said: {}, lines: payload };
  if (end < 0 || end > longestLineBytes) return nothing;
  const said = parsed(
    Buffer.from(payload.buffer, payload.byteOffset, end)
      .toString('utf8')
      .replace(/^\uFEFF/, ''),
  );
  if (said === null || !Object.hasOwn(said, 'message')) return nothing;
  const lines = Uint8Array.from(payload);
  lines.fill(space, 0, end);
  return { said, lines };
}

function parsed(line: string): object | null {
  if (!line.trimStart().startsWith('{')) return null;
  try {
    return JSON.parse(line) as object;
  } catch {
    return null;
  }
}
