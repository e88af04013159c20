import { Body, Controller, Get, Inject, Post, Query, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { AnyoneMay } from '../platform/actor.js';
import { CONFIG, type Config } from '../platform/config.js';
import { knownLanguage, speak } from '../platform/sentences/language.js';
import { keepLanguage } from '../platform/web/language-asked.js';
import type { HouseRequest } from '../platform/web/request.js';
import { cookieOf, deviceCookie, giveDeviceCookie, giveSessionCookie, takeSessionCookie } from './cookies.js';
import { goTo } from './go-to.js';
import { lostFormIn } from './lost-form.js';
import { ownPath } from './own-path.js';
import { readForm, troubleOf } from './read-form.js';
import { SignInForm } from './session.form.js';
import { Sessions } from './sessions.js';
import { SignIn } from './sign-in.js';
import { SignInPages } from './sign-in-pages.js';
import { placeOf, withRetryAfter } from './sign-in-place.js';
import { OpenBeforePasswordChange, SignsIn } from './signed-in.guard.js';

@ApiExcludeController()
@Controller()
export class SignInController {
  constructor(
    private readonly signIn: SignIn,
    private readonly sessions: Sessions,
    private readonly pages: SignInPages,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  @Get('sign-in')
  @AnyoneMay()
  @OpenBeforePasswordChange()
  show(
    @Req() request: HouseRequest,
    @Query() query: Record<string, unknown>,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode> {
    const chosen = knownLanguage(query['language']);
    if (chosen !== null) {
      speak(chosen);
      keepLanguage(reply, this.config, chosen);
    }
    return this.pages.page(request, query, [], '');
  }

  @Post('sign-in')
  @AnyoneMay()
  @SignsIn()
  @OpenBeforePasswordChange()
  async begin(
    @Req() request: HouseRequest,
    @Body() body: Record<string, unknown>,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode | null> {
    try {
      const { next, lost, ...fields } = body;
      const form = await readForm(SignInForm, fields);
      const { token } = await withRetryAfter(reply, this.signIn.execute(form, placeOf(request)));
      giveSessionCookie(reply, this.config, token);
      await this.renewDeviceCookie(request, reply);
      return await this.onward(reply, token, { next, lost });
    } catch (error) {
      const trouble = troubleOf(error);
      if (trouble === null) throw error;
      void reply.status(trouble.status);
      return this.pages.page(
        request,
        body,
        trouble.sentences,
        lostFormIn(body['lost']) === null ? '' : String(body['lost']),
      );
    }
  }

  @Post('sign-out')
  @AnyoneMay()
  @OpenBeforePasswordChange()
  async end(@Req() request: HouseRequest, @Res({ passthrough: true }) reply: FastifyReply): Promise<null> {
    if (request.sessionHash !== undefined) await this.sessions.end(request.sessionHash);
    takeSessionCookie(reply, this.config);
    return goTo(reply, '/sign-in');
  }

  /** The page after signing in: a form that had lost its session is shown, with the token of the new one. */
  private async onward(
    reply: FastifyReply,
    token: string,
    { next, lost }: Record<string, unknown>,
  ): Promise<VNode | null> {
    const page = await this.pages.lostForm(lost, token);
    if (page === null) return goTo(reply, afterSignIn(next));
    void reply.status(200).header('Cache-Control', 'no-store');
    return page;
  }

  /** A device that is used stays known. */
  private async renewDeviceCookie(request: HouseRequest, reply: FastifyReply): Promise<void> {
    const token = cookieOf(request, deviceCookie);
    const device = await this.signIn.deviceAt(token);
    if (token !== null && device !== null) giveDeviceCookie(reply, this.config, token);
  }
}

/** Where the person wanted to go, else the desk of the role. */
function afterSignIn(next: unknown): string {
  const path = ownPath(next);
  return path === '/' ? '/home' : path;
}
