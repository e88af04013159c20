import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { DoRungForm, DropChangeoverForm, OpenChangeoverForm } from './changeover.form.js';
import { changeoverOf, type ChangeoverRow } from './changeovers.js';
import { DoRung, type RungAnswer } from './do-rung.js';
import { DropChangeover } from './drop-changeover.js';
import { OpenChangeover } from './open-changeover.js';

@ApiTags('changeovers')
@Controller('api/changeovers')
export class ChangeoverApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly openChangeover: OpenChangeover,
    private readonly doRung: DoRung,
    private readonly dropChangeover: DropChangeover,
  ) {}

  @Post()
  @May('run-line')
  @ApiOperation({ summary: 'A line begins to be changed over to another format' })
  open(@Asking() asked: Asked, @Body() form: OpenChangeoverForm) {
    return this.openChangeover.execute(asked, form);
  }

  @Get(':id')
  @May('read')
  @ApiOperation({ summary: 'One changeover: the rungs that are done and the one that comes next' })
  one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string): Promise<ChangeoverRow> {
    return changeoverOf(this.reader, actor.siteId, id);
  }

  @Post(':id/rungs')
  @May('run-line')
  @ApiOperation({ summary: 'The next rung is done, with its proof' })
  rung(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: DoRungForm): Promise<RungAnswer> {
    return this.doRung.execute(asked, id, form);
  }

  @Post(':id/drop')
  @May('run-line')
  @ApiOperation({ summary: 'It does not take place; what was done on it stays recorded' })
  drop(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: DropChangeoverForm) {
    return this.dropChangeover.execute(asked, id, form);
  }
}
