import { Body, Controller, Get, Inject, Post, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { CONFIG, type Config } from '../platform/config.js';
import { Ids } from '../platform/ids.js';
import { NotPermitted } from '../platform/refusal.js';
import { Asking, Looking, type HouseRequest, type Viewer } from '../platform/web/request.js';
import { Sent, type SentForm } from '../platform/web/sent-form.js';
import { giveSessionCookie } from './cookies.js';
import { goTo } from './go-to.js';
import { OwnSecrets } from './own-secrets.js';
import { ownPage } from './own.page.js';
import { OwnSessions } from './own-sessions.js';
import { readForm, troubleOf } from './read-form.js';
import { ChangePasswordForm, OwnLanguageForm, SetPinForm } from './session.form.js';
import type { Begun } from './sessions.js';
import { SetOwnLanguage } from './set-own-language.js';
import { placeOf, withRetryAfter } from './sign-in-place.js';
import { OpenBeforePasswordChange } from './signed-in.guard.js';

@ApiExcludeController()
@Controller()
export class OwnPageController {
  constructor(
    private readonly ownSecrets: OwnSecrets,
    private readonly ownSessions: OwnSessions,
    private readonly setOwnLanguage: SetOwnLanguage,
    private readonly ids: Ids,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  @Get('me')
  @May('read')
  @OpenBeforePasswordChange()
  show(@Req() request: HouseRequest, @Looking() viewer: Viewer): Promise<VNode> {
    return this.page(request, viewer, []);
  }

  /** The page's address before it had more than secrets. */
  @Get('change-password')
  @May('read')
  @OpenBeforePasswordChange()
  lead(@Res({ passthrough: true }) reply: FastifyReply): null {
    return goTo(reply, '/me');
  }

  @Post('me/language')
  @May('read')
  setLanguage(@Sent() sent: SentForm, @Asking() asked: Asked, @Req() request: HouseRequest, @Looking() viewer: Viewer) {
    return sent.take({
      form: OwnLanguageForm,
      timeZone: viewer.timeZone,
      act: (form) => this.setOwnLanguage.execute(asked, form),
      next: () => '/me',
      says: () => ({ code: 'own-language-set', facts: {} }),
      again: (trouble) => this.page(request, viewer, [trouble.sentence]),
    });
  }

  @Post('change-password')
  @May('read')
  @OpenBeforePasswordChange()
  changePassword(
    @Asking() asked: Asked,
    @Req() request: HouseRequest,
    @Body() body: Record<string, unknown>,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode | null> {
    return this.take(request, reply, async () => {
      const form = await readForm(ChangePasswordForm, body);
      return this.ownSecrets.changePassword(asked, form, placeOf(request));
    });
  }

  @Post('change-pin')
  @May('read')
  setPin(
    @Asking() asked: Asked,
    @Req() request: HouseRequest,
    @Body() body: Record<string, unknown>,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode | null> {
    return this.take(request, reply, async () => {
      const form = await readForm(SetPinForm, body);
      return this.ownSecrets.setPin(asked, form, placeOf(request));
    });
  }

  private async take(request: HouseRequest, reply: FastifyReply, change: () => Promise<Begun>): Promise<VNode | null> {
    try {
      const { token } = await withRetryAfter(reply, change());
      giveSessionCookie(reply, this.config, token);
      return goTo(reply, '/');
    } catch (error) {
      const trouble = troubleOf(error);
      if (trouble === null || request.viewer === undefined) throw error;
      void reply.status(trouble.status);
      return this.page(request, request.viewer, trouble.sentences);
    }
  }

  private async page(request: HouseRequest, viewer: Viewer, trouble: readonly string[]): Promise<VNode> {
    if (request.sessionHash === undefined) throw new NotPermitted('not-permitted');
    const { person, mustChangePassword } = await this.ownSessions.read(request.sessionHash);
    return ownPage({
      viewer,
      personCode: person?.code ?? '',
      mustChange: mustChangePassword,
      trouble,
      formKey: this.ids.next(),
    });
  }
}
