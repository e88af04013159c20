import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import { RouteConfig } from '@nestjs/platform-fastify';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { createGunzip } from 'node:zlib';
import { pipeline, type Readable } from 'node:stream';
import { NotTaken } from '../refusal.js';
import { isTurnOver } from '../taking-turns.js';

/** Types whose bodies are read as they arrive, by the routes that say so. */
const streamedTypes = ['application/x-ndjson', 'text/csv'] as const;
type StreamedType = (typeof streamedTypes)[number];

/** What a chunk brought about: null to go on, or why nothing more is to be read. */
export type TakeChunk<Stop> = (chunk: Uint8Array) => Stop | null;

/** A body that nobody has read yet. */
export class StreamedBody {
  constructor(
    readonly type: StreamedType,
    private readonly source: Readable,
    private readonly isPacked: boolean,
  ) {}

  /**
   * Hands all bytes over as they arrive, unpacked. Reading a chunk is synchronous, so the sender is slowed down by
   * itself; what has arrived at once is read by turns with everybody else. What comes after a stop is let pass unread.
   *
   * @returns why it stopped; null: all of it was read, and its end was seen
   * @throws {NotTaken} `body-cut-off`, `body-too-large`
   */
  read<Stop>(mostBytes: number, take: TakeChunk<Stop>): Promise<Stop | null> {
    return new Promise((resolve, reject) => {
      const { source } = this;
      const unpacked = this.isPacked ? source.pipe(createGunzip()) : source;
      let [seen, isOver] = [0, false];
      const over = (settle: () => void): void => {
        if (isOver) return;
        isOver = true;
        if (unpacked !== source) {
          source.unpipe();
          unpacked.destroy();
        }
        source.resume();
        settle();
      };
      const cutOff = (): void => {
        over(() => {
          reject(new NotTaken('bad-body', 'body-cut-off'));
        });
      };
      unpacked.on('data', (chunk: Uint8Array) => {
        if (isOver) return;
        seen += chunk.length;
        if (seen > mostBytes) {
          over(() => {
            reject(new NotTaken('too-large', 'body-too-large'));
          });
          return;
        }
        const stop = takeOrGiveUp(take, chunk, (error) => {
          over(() => {
            reject(error);
          });
        });
        if (stop !== null) {
          over(() => {
            resolve(stop);
          });
        } else if (isTurnOver()) {
          giveWay(unpacked);
        }
      });
      unpacked.on('end', () => {
        over(() => {
          resolve(null);
        });
      });
      unpacked.on('error', cutOff);
      source.on('error', cutOff);
      source.on('close', () => {
        if (!source.readableEnded) cutOff();
      });
    });
  }

  /**
   * The same, unpacked, for who takes it piece by piece.
   *
   * @throws {NotTaken} `body-cut-off`
   */
  async *pieces(): AsyncGenerator<Uint8Array> {
    const unpacked = createGunzip();
    const bytes: Readable = this.isPacked ? pipeline(this.source, unpacked, () => undefined) : this.source;
    try {
      for await (const piece of bytes as AsyncIterable<Uint8Array>) yield piece;
    } catch {
      throw new NotTaken('bad-body', 'body-cut-off');
    }
  }
}

/** Goes on after others have had their turn. */
function giveWay(bytes: Readable): void {
  bytes.pause();
  setImmediate(() => bytes.resume());
}

function takeOrGiveUp<Stop>(take: TakeChunk<Stop>, chunk: Uint8Array, giveUp: (error: Error) => void): Stop | null {
  try {
    return take(chunk);
  } catch (error) {
    giveUp(error instanceof Error ? error : new Error(String(error)));
    return null;
  }
}

interface StreamsConfig {
  readonly streams?: boolean;
}

/** States, beside a route, that it reads its body as it arrives. */
export const Streams = (): MethodDecorator => RouteConfig({ streams: true } satisfies StreamsConfig);

/** Lets the routes that stream read their bodies themselves; to all others such a body is of no type that they take. */
export function leaveStreamsUnread(server: FastifyInstance): void {
  for (const type of streamedTypes) {
    server.addContentTypeParser(type, (request, payload, done) => {
      if (!isStreaming(request)) {
        done(Object.assign(new Error('not streamed here'), { statusCode: 415 }));
        return;
      }
      const encoding = request.headers['content-encoding'] ?? 'identity';
      if (encoding !== 'gzip' && encoding !== 'identity') {
        done(Object.assign(new Error('an encoding that is not taken'), { statusCode: 415 }));
        return;
      }
      done(null, new StreamedBody(type, payload, encoding === 'gzip'));
    });
  }
}

function isStreaming(request: FastifyRequest): boolean {
  return (request.routeOptions.config as StreamsConfig).streams === true;
}

/** The body of a route that streams. */
export const Streaming = createParamDecorator((_: unknown, context: ExecutionContext): StreamedBody => {
  const { body } = context.switchToHttp().getRequest<FastifyRequest>();
  if (body instanceof StreamedBody) return body;
  throw new NotTaken('wrong-type', 'body-not-streamed', { types: streamedTypes.join(', ') });
});
