import { Body, Controller, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { OwnLanguageForm } from './session.form.js';
import { SetOwnLanguage } from './set-own-language.js';

@ApiTags('sessions')
@Controller('api/sessions/me/language')
export class OwnLanguageApi {
  constructor(private readonly setOwnLanguage: SetOwnLanguage) {}

  @Post()
  @May('read')
  @ApiOperation({ summary: 'Choose the language that pages and answers speak to oneself' })
  @ApiCreatedResponse({ schema: { example: { language: 'es' } } })
  set(@Asking() asked: Asked, @Body() form: OwnLanguageForm): Promise<{ readonly language: string }> {
    return this.setOwnLanguage.execute(asked, form);
  }
}
