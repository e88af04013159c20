import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { ofSite } from '../plant/of-site.js';
import { lineOf } from '../plant/plant-facts.js';
import { AddCheckPlan, type CheckPlanAnswer } from './add-check-plan.js';
import { ChangeCheckPlan } from './change-check-plan.js';
import { AddCheckPlanForm, ChangeCheckPlanForm, EndCheckPlanForm } from './check-plan.form.js';
import type { CheckPlanRow } from './check-plan-rows.js';
import { plansOfSite } from './check-plans.js';
import { dueChecks, type DueCheck } from './due-checks.js';
import { EndCheckPlan } from './end-check-plan.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const example = { planId: id, id, validFrom: '2026-03-12T05:00:00.000Z' };

@ApiTags('line checks')
@Controller('api')
export class CheckPlanApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly addPlan: AddCheckPlan,
    private readonly changePlan: ChangeCheckPlan,
    private readonly endPlan: EndCheckPlan,
  ) {}

  @Get('check-plans')
  @May('read')
  @ApiOperation({ summary: 'What is checked at the lines: the plans in force now' })
  async list(@Acting() actor: Actor): Promise<{ readonly items: readonly CheckPlanRow[]; readonly next: null }> {
    return { items: await plansOfSite(this.reader, actor.siteId, this.clock.now()), next: null };
  }

  @Get('lines/:lineId/due-checks')
  @May('read')
  @ApiOperation({ summary: 'The checks of a line as they stand now, the most pressing first' })
  @ApiOkResponse({
    schema: { example: { items: [{ word: 'due', dueAt: example.validFrom, minutesLeft: -2 }], next: null } },
  })
  async due(
    @Acting() actor: Actor,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ): Promise<{ readonly items: readonly DueCheck[]; readonly next: null }> {
    ofSite(actor, 'packing-line', await lineOf(this.reader, lineId));
    return { items: await dueChecks(this.reader, lineId, this.clock.now()), next: null };
  }

  @Post('check-plans')
  @May('plan-checks')
  @ApiOperation({ summary: 'Set up what is checked at a line; sizes, weights and intervals are the plant’s own' })
  @ApiCreatedResponse({ schema: { example } })
  add(@Asking() asked: Asked, @Body() form: AddCheckPlanForm): Promise<CheckPlanAnswer> {
    return this.addPlan.execute(asked, form);
  }

  @Post('check-plans/:id/versions')
  @May('plan-checks')
  @ApiOperation({ summary: 'A plan says something else from an instant on' })
  @ApiCreatedResponse({ schema: { example } })
  change(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) planId: string,
    @Body() form: ChangeCheckPlanForm,
  ): Promise<CheckPlanAnswer> {
    return this.changePlan.execute(asked, planId, form);
  }

  @Post('check-plans/:id/end')
  @May('plan-checks')
  @ApiOperation({ summary: 'A plan is not in force from now on' })
  @ApiCreatedResponse({ schema: { example } })
  end(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) planId: string,
    @Body() form: EndCheckPlanForm,
  ): Promise<CheckPlanAnswer> {
    return this.endPlan.execute(asked, planId, form);
  }
}
