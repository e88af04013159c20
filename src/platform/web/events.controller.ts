import { Controller, Get, Res, type BeforeApplicationShutdown } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { May } from '../actor.js';

/** The stream of events for open pages. So far it only keeps the line open; what it tells comes with the working pages. */
@Controller('events')
export class EventsController implements BeforeApplicationShutdown {
  private readonly open = new Set<FastifyReply>();

  @Get()
  @May('read')
  listen(@Res() reply: FastifyReply): void {
    reply.hijack();
    reply.raw.writeHead(200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store' });
    reply.raw.write(': open\n\n');
    this.open.add(reply);
    reply.raw.on('close', () => this.open.delete(reply));
  }

  beforeApplicationShutdown(): void {
    for (const reply of this.open) reply.raw.end();
  }
}
