import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../../journal/entry-draft.js';
import { May, MayBeQueued, type Actor } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Acting, Asking } from '../../platform/web/request.js';
import { ofSite } from '../../plant/of-site.js';
import { lineOf } from '../../plant/plant-facts.js';
import { ChangeSetting } from './change-setting.js';
import { CorrectSetting } from './correct-setting.js';
import { ChangeSettingForm, CorrectSettingForm } from './line-setting.form.js';
import { settingsOfLine } from './line-settings.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const settingExample = {
  ...{ id, lineId: id, formatId: id, changedAt: '2026-03-12T07:41:00.000Z' },
  ...{ setpointMilligrams: 1_003_500, rejectBelowMilligrams: null, rejectAboveMilligrams: null },
};
const listedExample = { ...settingExample, formatName: 'White 1 kg', why: 'Mean 2 g high', setBy: id };

@ApiTags('fill weights')
@Controller('api')
export class LineSettingApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly changeSetting: ChangeSetting,
    private readonly correctSetting: CorrectSetting,
  ) {}

  @Get('lines/:id/settings')
  @May('read')
  @ApiOperation({ summary: 'The last 200 changes of what a line is set to, the latest first' })
  @ApiOkResponse({ schema: { example: { items: [listedExample], next: null } } })
  async list(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) lineId: string) {
    const line = ofSite(actor, 'packing-line', await lineOf(this.reader, lineId));
    return { items: await settingsOfLine(this.reader, line.id), next: null };
  }

  @Post('lines/:id/settings')
  @May('run-line')
  @MayBeQueued()
  @ApiOperation({ summary: 'The filler of a line, or the limits of its weigher, were set otherwise' })
  @ApiCreatedResponse({ schema: { example: settingExample } })
  change(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) lineId: string, @Body() form: ChangeSettingForm) {
    return this.changeSetting.execute(asked, lineId, form);
  }

  @Post('line-settings/:id/correction')
  @May('correct')
  @ApiOperation({ summary: 'A change of setting was recorded wrongly, or did not occur' })
  correct(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CorrectSettingForm) {
    return this.correctSetting.execute(asked, id, form);
  }
}
