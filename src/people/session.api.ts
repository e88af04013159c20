import { Body, Controller, Delete, Get, HttpCode, Inject, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { Asked } from '../journal/entry-draft.js';
import { AnyoneMay, May, type Actor } from '../platform/actor.js';
import { sha256 } from '../platform/canonical-text.js';
import { CONFIG, type Config } from '../platform/config.js';
import { Acting, Asking, type HouseRequest } from '../platform/web/request.js';
import { giveSessionCookie, takeSessionCookie } from './cookies.js';
import { OwnSecrets } from './own-secrets.js';
import { OwnSessions, ownSessionExample, type OwnSession } from './own-sessions.js';
import { ChangePasswordForm, SetPinForm, SignInForm } from './session.form.js';
import { Sessions, type Begun } from './sessions.js';
import { SignIn } from './sign-in.js';
import { placeOf, withRetryAfter } from './sign-in-place.js';
import { OpenBeforePasswordChange, SignsIn } from './signed-in.guard.js';

const answer = { schema: { example: ownSessionExample } };

@ApiTags('sessions')
@Controller('api/sessions')
export class SessionApi {
  constructor(
    private readonly signIn: SignIn,
    private readonly sessions: Sessions,
    private readonly ownSecrets: OwnSecrets,
    private readonly ownSessions: OwnSessions,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  @Post()
  @AnyoneMay()
  @SignsIn()
  @OpenBeforePasswordChange()
  @ApiOperation({ summary: 'Sign in: the answer sets the session’s cookie and holds the token for changes' })
  @ApiCreatedResponse(answer)
  begin(
    @Body() form: SignInForm,
    @Req() request: HouseRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<OwnSession> {
    return this.answerWith(reply, this.signIn.execute(form, placeOf(request)));
  }

  @Get('me')
  @May('read')
  @OpenBeforePasswordChange()
  @ApiOperation({ summary: 'Who is signed in, with the token that changes take in x-csrf-token' })
  @ApiOkResponse(answer)
  async mine(@Acting() actor: Actor, @Req() request: HouseRequest): Promise<OwnSession> {
    if (request.sessionHash === undefined) return this.ownSessions.ofMachine(actor);
    return this.ownSessions.read(request.sessionHash);
  }

  @Delete()
  @AnyoneMay()
  @HttpCode(204)
  @OpenBeforePasswordChange()
  @ApiOperation({ summary: 'Sign out' })
  async end(@Req() request: HouseRequest, @Res({ passthrough: true }) reply: FastifyReply): Promise<void> {
    if (request.sessionHash !== undefined) await this.sessions.end(request.sessionHash);
    takeSessionCookie(reply, this.config);
  }

  @Post('me/password')
  @May('read')
  @OpenBeforePasswordChange()
  @ApiOperation({ summary: 'Choose a new password; a new session begins, all others end' })
  @ApiCreatedResponse(answer)
  changePassword(
    @Asking() asked: Asked,
    @Body() form: ChangePasswordForm,
    @Req() request: HouseRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<OwnSession> {
    return this.answerWith(reply, this.ownSecrets.changePassword(asked, form, placeOf(request)));
  }

  @Post('me/pin')
  @May('read')
  @ApiOperation({ summary: 'Choose the PIN for shared tablets; a new session begins, all others end' })
  @ApiCreatedResponse(answer)
  setPin(
    @Asking() asked: Asked,
    @Body() form: SetPinForm,
    @Req() request: HouseRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<OwnSession> {
    return this.answerWith(reply, this.ownSecrets.setPin(asked, form, placeOf(request)));
  }

  private async answerWith(reply: FastifyReply, beginning: Promise<Begun>): Promise<OwnSession> {
    const { token } = await withRetryAfter(reply, beginning);
    giveSessionCookie(reply, this.config, token);
    return this.ownSessions.read(sha256(token));
  }
}
