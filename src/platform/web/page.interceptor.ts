import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { isValidElement } from 'preact';
import { map, type Observable } from 'rxjs';
import { renderPage } from './render-page.js';
import type { HouseRequest } from './request.js';
import { forgetSaid } from './said.js';

/** A controller answers with a page's markup; here it becomes HTML. */
@Injectable()
export class PageInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    return next.handle().pipe(
      map((answer: unknown) => {
        if (!isValidElement(answer)) return answer;
        const reply = context.switchToHttp().getResponse<FastifyReply>();
        void reply.type('text/html; charset=utf-8');
        if (context.switchToHttp().getRequest<HouseRequest>().viewer?.said) forgetSaid(reply);
        return renderPage(answer);
      }),
    );
  }
}
