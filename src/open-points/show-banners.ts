import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import type { Observable } from 'rxjs';
import type { HouseRequest, ShownBanner } from '../platform/web/request.js';
import type { Banner } from './banners.js';
import { CountInterruptions } from './count-interruptions.js';
import { pageOfSubject } from './point-subject.js';

/** Before a page is made: what may interrupt the person who looks at it, counted where it is new to them. */
@Injectable()
export class ShowBanners implements NestInterceptor {
  constructor(private readonly interruptions: CountInterruptions) {}

  async intercept(context: ExecutionContext, next: CallHandler): Promise<Observable<unknown>> {
    const request = context.switchToHttp().getRequest<HouseRequest>();
    const { viewer } = request;
    if (viewer !== undefined && isPage(request)) {
      const banners = await this.interruptions.show(viewer.actor);
      request.viewer = { ...viewer, banners: banners.map(shown) };
    }
    return next.handle();
  }
}

function isPage({ method, url, headers }: HouseRequest): boolean {
  return method === 'GET' && !url.startsWith('/api/') && (headers.accept ?? '').includes('text/html');
}

function shown(banner: Banner): ShownBanner {
  const { pointId, cause, facts, pointClass, withinMinutes, pointCount, subjectKind, subjectId } = banner;
  const href = pageOfSubject(subjectKind, subjectId);
  return { pointId, cause, facts, pointClass, withinMinutes, pointCount, href };
}
