import { Inject, Injectable } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { sha256 } from '../platform/canonical-text.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { say } from '../platform/sentences/sentences.js';
import { renderPage } from '../platform/web/render-page.js';
import type { HouseRequest } from '../platform/web/request.js';
import { cookieOf, deviceCookie } from './cookies.js';
import { carried, lostFormIn, lostFormOf } from './lost-form.js';
import { lostFormPage } from './lost-form.page.js';
import { ownPath } from './own-path.js';
import { peopleWithPin } from './people.js';
import { enteredText } from './read-form.js';
import { csrfTokenOf } from './sessions.js';
import { isShared, SignIn } from './sign-in.js';
import { signInPage } from './sign-in.page.js';
import { findSignedIn } from './who-asks.js';

/** The page where everybody comes in, for the device that asks. */
@Injectable()
export class SignInPages {
  constructor(
    private readonly signIn: SignIn,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  /** @param lost a form that was sent without a session, as `carried` writes it; empty where there is none */
  async page(request: HouseRequest, entered: unknown, trouble: readonly string[], lost: string): Promise<VNode> {
    const device = await this.signIn.deviceAt(cookieOf(request, deviceCookie));
    const shared =
      device === null || !isShared(device)
        ? null
        : { code: device.code, people: await peopleWithPin(this.reader, device.siteId) };
    return signInPage({
      next: ownPath(enteredText(entered, 'next')),
      lost,
      trouble,
      entered: { code: enteredText(entered, 'code'), person: enteredText(entered, 'person') },
      shared,
    });
  }

  /** Answers a form that came without a session with the sign-in page, which carries it; false where it is none. */
  async carryOn(request: HouseRequest, reply: FastifyReply): Promise<boolean> {
    const lost = lostFormOf(request);
    if (lost === null) return false;
    const page = await this.page(request, {}, [say('lost-form-signed-out')], carried(lost));
    await reply.status(401).header('Cache-Control', 'no-store').type('text/html; charset=utf-8').send(renderPage(page));
    return true;
  }

  /** The form that had lost its session, shown with the token of the new one; null: none was carried, or not yet. */
  async lostForm(lost: unknown, token: string): Promise<VNode | null> {
    const form = lostFormIn(lost);
    const session = form === null ? null : await findSignedIn(this.reader, sha256(token), this.clock.now());
    if (form === null || session === null || session.mustChangePassword) return null;
    return lostFormPage({ form, csrfToken: csrfTokenOf(session.csrfSecret) });
  }
}
