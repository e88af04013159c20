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
import { giveSessionCookie } from './cookies.js';
import { goTo } from './go-to.js';
import { OwnSecrets } from './own-secrets.js';
import { ownSecretsPage } from './own-secrets.page.js';
import { OwnSessions } from './own-sessions.js';
import { readForm, troubleOf } from './read-form.js';
import { ChangePasswordForm, SetPinForm } from './session.form.js';
import type { Begun } from './sessions.js';
import { placeOf, withRetryAfter } from './sign-in-place.js';
import { OpenBeforePasswordChange } from './signed-in.guard.js';

@ApiExcludeController()
@Controller()
export class OwnSecretsController {
  constructor(
    private readonly ownSecrets: OwnSecrets,
    private readonly ownSessions: OwnSessions,
    private readonly ids: Ids,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  @Get('change-password')
  @May('read')
  @OpenBeforePasswordChange()
  show(@Req() request: HouseRequest, @Looking() viewer: Viewer): Promise<VNode> {
    return this.page(request, viewer, []);
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
    return ownSecretsPage({
      viewer,
      personCode: person?.code ?? '',
      mustChange: mustChangePassword,
      trouble,
      formKey: this.ids.next(),
    });
  }
}
