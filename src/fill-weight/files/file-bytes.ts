import { createHash } from 'node:crypto';
import { Readable } from 'node:stream';
import { createGunzip, createGzip } from 'node:zlib';
import { NotTaken, Refusal } from '../../platform/refusal.js';

/** A million lines of a wide export are smaller. Our own value, no source. */
const mostFileBytes = 134_217_728;
/** What a packed file may take of the database until it is stored or forgotten. */
const mostPackedBytes = 33_554_432;
const bytesAtOnce = 262_144;

/** A file as it waits to be stored. */
interface PackedFile {
  readonly packed: Buffer;
  readonly digest: string;
  readonly byteCount: number;
}

/**
 * Packs a file as it arrives; only what is packed stays in memory.
 *
 * @throws {NotTaken} `file-too-large`, `file-empty`
 */
export async function packed(source: AsyncIterable<Uint8Array>): Promise<PackedFile> {
  const hash = createHash('sha256');
  const parts: Buffer[] = [];
  let [byteCount, packedCount] = [0, 0];
  const counted = async function* (): AsyncGenerator<Uint8Array> {
    for await (const chunk of source) {
      byteCount += chunk.length;
      if (byteCount > mostFileBytes)
        throw new NotTaken('too-large', 'file-too-large', { most: mostFileBytes / 2 ** 20 });
      hash.update(chunk);
      yield chunk;
    }
  };
  const unpacked = Readable.from(counted());
  const gzip = createGzip({ level: 1, chunkSize: bytesAtOnce });
  unpacked.on('error', (error) => gzip.destroy(error));
  for await (const part of unpacked.pipe(gzip) as AsyncIterable<Buffer>) {
    packedCount += part.length;
    if (packedCount > mostPackedBytes) {
      throw new NotTaken('too-large', 'file-too-large', { most: mostFileBytes / 2 ** 20 });
    }
    parts.push(part);
  }
  if (byteCount === 0) throw new NotTaken('bad-body', 'file-empty');
  return { packed: Buffer.concat(parts), digest: hash.digest('hex'), byteCount };
}

/** The bytes of a packed file in pieces; between them others have their turn. */
export function unpacked(file: Uint8Array): AsyncIterable<Buffer> {
  return Readable.from([file]).pipe(createGunzip({ chunkSize: bytesAtOnce }));
}

const [newline, carriageReturn, space] = [0x0a, 0x0d, 0x20];
const byteOrderMark = [0xef, 0xbb, 0xbf];

/**
 * The line of a file that names the columns: the last of so many header lines, or the first line where there are none.
 * Lines with nothing on them do not count.
 *
 * @throws {Refusal} `file-is-no-text` for what is no text in UTF-8 or a character set like it
 */
export async function headingsOf(file: Uint8Array, headerLines: number): Promise<Uint8Array> {
  for await (const piece of unpacked(file)) {
    refuseNoText(piece);
    const start = byteOrderMark.every((byte, place) => piece[place] === byte) ? byteOrderMark.length : 0;
    const lines = linesOf(piece.subarray(start), Math.max(1, headerLines));
    return lines.at(-1) ?? new Uint8Array(0);
  }
  return new Uint8Array(0);
}

/** Text of Windows in two bytes a letter, a workbook (a ZIP archive), and anything else with zero bytes. */
function refuseNoText(piece: Uint8Array): void {
  const isArchive = piece[0] === 0x50 && piece[1] === 0x4b && piece[2] === 0x03;
  if (isArchive || piece.subarray(0, 4096).includes(0)) throw new Refusal('file-is-no-text');
}

function linesOf(bytes: Uint8Array, count: number): Uint8Array[] {
  const lines: Uint8Array[] = [];
  for (let start = 0; start < bytes.length && lines.length < count;) {
    const next = bytes.indexOf(newline, start);
    const stop = next < 0 ? bytes.length : next;
    const end = bytes[stop - 1] === carriageReturn ? stop - 1 : stop;
    const line = bytes.subarray(start, end);
    if (line.some((byte) => byte > space)) lines.push(line);
    start = stop + 1;
  }
  return lines;
}
