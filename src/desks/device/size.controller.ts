import { Body, Controller, Get, Header, Inject, Post, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { goTo } from '../../people/go-to.js';
import { AnyoneMay, May } from '../../platform/actor.js';
import { CONFIG, type Config } from '../../platform/config.js';
import { Looking, type HouseRequest, type Viewer } from '../../platform/web/request.js';
import { SizeStepForm } from './size.form.js';
import { sizePage } from './size.page.js';
import { cardTenths, sizeCookie, sizeStyle, steppedTenths } from './true-size.js';

/** Browsers keep a cookie no longer than this. */
const daysKept = 400;

/** The true size of this device's screen. It belongs to the device, not to a person: a cookie holds it. */
@ApiExcludeController()
@Controller()
export class SizeController {
  constructor(@Inject(CONFIG) private readonly config: Config) {}

  @Get('assets/size.css')
  @AnyoneMay()
  @Header('Content-Type', 'text/css; charset=utf-8')
  @Header('Cache-Control', 'private, no-cache')
  style(@Req() request: HouseRequest): string {
    return sizeStyle(request.cookies[sizeCookie]);
  }

  @Get('device/size')
  @May('read')
  page(@Looking() viewer: Viewer, @Req() request: HouseRequest): VNode {
    return sizePage({ viewer, tenths: cardTenths(request.cookies[sizeCookie]) });
  }

  @Post('device/size')
  @May('read')
  step(
    @Req() request: HouseRequest,
    @Body() form: SizeStepForm,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): null {
    const tenths = steppedTenths(cardTenths(request.cookies[sizeCookie]), form.step);
    void reply.setCookie(sizeCookie, String(tenths), {
      path: '/',
      sameSite: 'lax',
      httpOnly: true,
      secure: this.config.secureCookies,
      maxAge: daysKept * 86_400,
    });
    return goTo(reply, '/device/size');
  }
}
