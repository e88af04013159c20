import { Body, Controller, Get, Inject, Post, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { LocatedShift } from '../core/shift-calendar/locate-shift.js';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { CorrectPlantRecord } from './correct-plant-record.js';
import { shiftAt } from './plant-facts.js';
import { CorrectPlantRecordForm } from './rules.form.js';
import { ShiftQuery } from './shift.form.js';
import { allOf, type WholePlant } from './whole-plant.js';

const shiftExample = {
  productionOn: '2026-10-24',
  shiftCode: 'N',
  startsAt: '2026-10-24T20:00:00.000Z',
  endsAt: '2026-10-25T05:00:00.000Z',
  lengthMinutes: 540,
  crew: null,
  isWorked: true,
};

@ApiTags('plant')
@Controller('api/plant')
export class PlantApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly correctPlantRecord: CorrectPlantRecord,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Everything that is set up, as it is now' })
  @ApiOkResponse({ schema: { example: { site: { code: 'AQ', timeZone: 'Europe/Berlin' }, shift: shiftExample } } })
  plant(@Acting() actor: Actor): Promise<WholePlant> {
    return allOf(this.reader, actor.siteId, this.clock.now());
  }

  @Get('shift')
  @May('read')
  @ApiOperation({ summary: 'Production day and shift of an instant, with its true length' })
  @ApiOkResponse({ schema: { example: shiftExample } })
  shift(@Acting() actor: Actor, @Query() query: ShiftQuery): Promise<LocatedShift> {
    return shiftAt(this.reader, actor.siteId, query.at ?? this.clock.now());
  }

  @Post('corrections')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Correct a record of the set-up; the right one is entered anew' })
  correct(@Asking() asked: Asked, @Body() form: CorrectPlantRecordForm): Promise<{ readonly id: string }> {
    return this.correctPlantRecord.execute(asked, form);
  }
}
