import { Body, Controller, Get, Inject, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../../journal/entry-draft.js';
import { May, type Actor } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Acting, Asking } from '../../platform/web/request.js';
import { EndHandPlan } from './end-hand-plan.js';
import { EndHandPlanForm, SetHandPlanForm } from './hand-plan.form.js';
import { handPlansOf } from './hand-plans.js';
import { SetHandPlan } from './set-hand-plan.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const plan = { id, lineId: id, lineCode: '1', formatId: null, everyMinutes: 30, packCount: 5, graceMinutes: 10 };

@ApiTags('fill weights')
@Controller('api/hand-sample-plans')
export class HandPlanApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly setPlan: SetHandPlan,
    private readonly endPlan: EndHandPlan,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'How often packs are weighed by hand, line by line' })
  @ApiOkResponse({ schema: { example: { items: [plan], next: null } } })
  async list(@Acting() actor: Actor) {
    return { items: await handPlansOf(this.reader, actor.siteId), next: null };
  }

  @Post()
  @May('plan-checks')
  @ApiOperation({ summary: 'Set how often packs of a line are weighed by hand, and how many' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  set(@Asking() asked: Asked, @Body() form: SetHandPlanForm): Promise<{ readonly id: string }> {
    return this.setPlan.execute(asked, form);
  }

  @Post('end')
  @May('plan-checks')
  @ApiOperation({ summary: 'Packs of a line are no longer weighed by hand by plan' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  end(@Asking() asked: Asked, @Body() form: EndHandPlanForm): Promise<{ readonly id: string }> {
    return this.endPlan.execute(asked, form);
  }
}
