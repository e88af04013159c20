import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { FastifyReply } from 'fastify';
import { from, lastValueFrom, type Observable } from 'rxjs';
import type { Asked } from '../journal/entry-draft.js';
import { queueKey } from '../platform/actor.js';
import type { Canonical } from '../platform/canonical-text.js';
import { Refusal } from '../platform/refusal.js';
import { secretFields } from '../platform/web/form-trouble.js';
import { askedOf, type Barred, type HouseRequest } from '../platform/web/request.js';
import { KeepEntry, type KeptAnswer } from './keep-entry.js';
import { whyNotTaken } from './kept-entry-words.js';

/** Stands around every route whose form may have waited: what cannot be taken is kept, whatever it is refused for. */
@Injectable()
export class KeepEntries implements NestInterceptor {
  constructor(
    private readonly reflector: Reflector,
    private readonly keepEntry: KeepEntry,
  ) {}

  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const request = context.switchToHttp().getRequest<HouseRequest>();
    const isKept = request.happening?.how === 'queued';
    if (!isKept || this.reflector.get(queueKey, context.getHandler()) !== true) return next.handle();
    return from(this.take(request, context.switchToHttp().getResponse<FastifyReply>(), next));
  }

  private async take(request: HouseRequest, reply: FastifyReply, next: CallHandler): Promise<unknown> {
    const asked: Asked = askedOf(request);
    const before = await this.keepEntry.wasKept(asked.actor, asked.route, asked.key ?? '');
    if (before !== null) return this.keep(asked, before, { request, reply });
    try {
      const barred = request.barred ?? null;
      if (barred !== null) throw new Refusal(barred.code, barred.facts);
      return await lastValueFrom(next.handle(), { defaultValue: null });
    } catch (error) {
      const why = whyNotTaken(error);
      if (why === null) throw error;
      return this.keep(asked, why, { request, reply });
    }
  }

  private async keep(
    asked: Asked,
    why: Barred,
    { request, reply }: { readonly request: HouseRequest; readonly reply: FastifyReply },
  ): Promise<KeptAnswer | null> {
    const { happening = null } = asked;
    if (happening === null) throw new RangeError('only what has happened is kept');
    const timeZone = request.viewer?.timeZone ?? 'UTC';
    const entry = { why, timeZone, address: request.url.split('?')[0] ?? '/', content: contentOf(request.body) };
    const kept = await this.keepEntry.execute(asked, happening, entry);
    if ((request.headers.accept ?? '').includes('text/html')) {
      void reply.status(303).header('Location', `/kept-entries/${kept.id}`);
      return null;
    }
    void reply.status(200);
    return kept;
  }
}

/** What was entered, as it can be written down: without secrets, numbers with fractions as text. */
function contentOf(body: unknown): { readonly [field: string]: Canonical } {
  const plain = JSON.parse(JSON.stringify(body ?? {}), (_, value: unknown) =>
    typeof value === 'number' && !Number.isSafeInteger(value) ? String(value) : value,
  ) as unknown;
  if (plain === null || typeof plain !== 'object') return { body: String(plain) };
  const fields = Object.entries(plain as Record<string, Canonical>).filter(([name]) => !secretFields.has(name));
  return Object.fromEntries(fields);
}
