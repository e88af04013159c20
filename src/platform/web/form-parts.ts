import type { Readable } from 'node:stream';
import { NotTaken } from '../refusal.js';

/** A file in a form; its bytes come as they arrive. */
export class FilePart {
  constructor(
    readonly name: string,
    readonly bytes: AsyncIterable<Uint8Array>,
  ) {}
}

const mostFieldBytes = 4000;
const mostHeaderBytes = 4000;
const mostFields = 10;
const [lineEnd, headerEnd] = [Buffer.from('\r\n'), Buffer.from('\r\n\r\n')];

/**
 * Reads a form that carries one file as its last part (RFC 7578), as it arrives: the fields before the file at once, the
 * file when it is asked for.
 */
export class FormParts {
  private rest: Buffer = lineEnd;
  private readonly delimiter: Buffer;
  private readonly pieces: AsyncIterator<Buffer>;

  constructor(source: Readable, boundary: string) {
    this.delimiter = Buffer.from(`\r\n--${boundary}`);
    this.pieces = source[Symbol.asyncIterator]() as AsyncIterator<Buffer>;
  }

  /** @throws {NotTaken} `body-cut-off` for what is no such form, too */
  async read(): Promise<{ readonly fields: ReadonlyMap<string, string>; readonly file: FilePart | null }> {
    const fields = new Map<string, string>();
    await this.upTo(this.delimiter, mostHeaderBytes);
    while (fields.size <= mostFields) {
      const follows = await this.taken(2);
      if (follows.toString('latin1') === '--') return { fields, file: null };
      this.rest = Buffer.concat([lineEnd, this.rest]);
      const header = (await this.upTo(headerEnd, mostHeaderBytes)).toString('utf8');
      const fileName = /;\s*filename="((?:[^"\\\r\n]|\\.)*)"/i.exec(header)?.[1];
      if (fileName !== undefined) return { fields, file: new FilePart(fileName, this.file()) };
      const name = /;\s*name="([\w.-]{1,60})"/i.exec(header)?.[1];
      if (name === undefined) break;
      fields.set(name, (await this.upTo(this.delimiter, mostFieldBytes)).toString('utf8'));
    }
    throw cutOff();
  }

  /** What comes before a mark; the mark is passed over. */
  private async upTo(mark: Buffer, most: number): Promise<Buffer> {
    for (;;) {
      const place = this.rest.indexOf(mark);
      if (place >= 0) {
        const before = this.rest.subarray(0, place);
        this.rest = this.rest.subarray(place + mark.length);
        return before;
      }
      if (this.rest.length > most) throw cutOff();
      await this.more();
    }
  }

  private async taken(count: number): Promise<Buffer> {
    while (this.rest.length < count) await this.more();
    const bytes = this.rest.subarray(0, count);
    this.rest = this.rest.subarray(count);
    return bytes;
  }

  /** The end of what has come may be the begin of the delimiter: it is kept back until more has come. */
  private async *file(): AsyncGenerator<Uint8Array> {
    for (;;) {
      const place = this.rest.indexOf(this.delimiter);
      const sure = place >= 0 ? place : Math.max(0, this.rest.length - this.delimiter.length);
      if (sure > 0) yield this.rest.subarray(0, sure);
      this.rest = this.rest.subarray(sure);
      if (place >= 0) return;
      await this.more();
    }
  }

  private async more(): Promise<void> {
    const next = await this.pieces.next().catch(() => null);
    if (next === null || next.done === true) throw cutOff();
    this.rest = this.rest.length === 0 ? next.value : Buffer.concat([this.rest, next.value]);
  }
}

function cutOff(): NotTaken {
  return new NotTaken('bad-body', 'body-cut-off');
}
