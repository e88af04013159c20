import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import type { FastifyInstance } from 'fastify';

/** Below this, packing costs more than it saves. */
const leastBytes = 1024;
const packable = /^(text\/(html|css|csv|plain|javascript)|application\/(json|problem\+json)|image\/svg\+xml)/;
const packBrotli = promisify(brotliCompress);
const packGzip = promisify(gzip);

/** The better of the two encodings that a browser takes, by its `Accept-Encoding`; null for none. */
export function encodingFor(accepted: string | undefined): 'br' | 'gzip' | null {
  const taken = (accepted ?? '')
    .split(',')
    .map((part) => part.trim().toLowerCase())
    .filter((part) => !/;\s*q=0(\.0*)?$/.test(part))
    .map((part) => part.split(';')[0]?.trim());
  return (['br', 'gzip'] as const).find((encoding) => taken.includes(encoding)) ?? null;
}

/** Packs pages and JSON on their way out. Event streams write past this, files of the house are packed already. */
export function packAnswers(server: FastifyInstance): void {
  server.addHook('onSend', async (request, reply, payload) => {
    if (typeof payload !== 'string' && !Buffer.isBuffer(payload)) return payload;
    if (Buffer.byteLength(payload) < leastBytes || reply.hasHeader('content-encoding')) return payload;
    if (!packable.test(String(reply.getHeader('content-type') ?? ''))) return payload;
    void reply.header('Vary', 'Accept-Encoding');
    const encoding = encodingFor(request.headers['accept-encoding']);
    if (encoding === null) return payload;
    void reply.header('Content-Encoding', encoding).removeHeader('content-length');
    return encoding === 'gzip' ? packGzip(payload) : packBrotli(payload, { params: brotli });
  });
}

/**
 * Pages are made for each request: level 4 takes a millisecond where the highest takes fifty, and looking back over 256 kB
 * (2^18) takes no four megabytes of memory for each answer. Our own values, measured here.
 */
const brotli = { [constants.BROTLI_PARAM_QUALITY]: 4, [constants.BROTLI_PARAM_LGWIN]: 18 };
