import { Controller, Get, HttpException, Query, Req, Res, type BeforeApplicationShutdown } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { May, type Actor } from '../platform/actor.js';
import { Acting, type HouseRequest } from '../platform/web/request.js';
import { EventStream } from './event-stream.js';
import { JournalNews } from './journal-news.js';

/** A person has a page or two open on a device or two; more streams than this are a mistake somewhere. */
const mostStreams = 12;

/**
 * The journal as it grows, as server-sent events. An event's id is the journal's sequence, so that a browser which comes
 * back (`Last-Event-ID`) or a page that was made at a sequence (`?since=`) misses nothing, whichever process answers.
 * A stream is over when the session or the token that opened it is: at the next heartbeat it says so and ends.
 */
@ApiExcludeController()
@Controller('events')
export class EventsController implements BeforeApplicationShutdown {
  private readonly open = new Map<EventStream, string>();

  constructor(private readonly news: JournalNews) {}

  @Get()
  @May('read')
  async listen(
    @Acting() actor: Actor,
    @Req() request: HouseRequest,
    @Query('since') since: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const known = sequenceOf(request.headers['last-event-id']) ?? sequenceOf(since);
    const beginning = await this.news.beginningFor(actor.siteId, known);
    const holder = actor.personId ?? actor.deviceId ?? '';
    if ([...this.open.values()].filter((one) => one === holder).length >= mostStreams) {
      throw new HttpException('too many streams', 429);
    }
    const stream = new EventStream(reply, async () => (await request.stillHolds?.()) === true);
    this.open.set(stream, holder);
    const leave = this.news.listen({
      siteId: actor.siteId,
      since: beginning,
      take: (news) => stream.tell(news),
    });
    stream.whenOver(() => {
      leave();
      this.open.delete(stream);
    });
  }

  beforeApplicationShutdown(): void {
    for (const stream of this.open.keys()) stream.end();
  }
}

/** Null for what is no sequence: the stream then begins now. */
function sequenceOf(text: unknown): number | null {
  return typeof text === 'string' && /^\d{1,15}$/.test(text) ? Number(text) : null;
}
