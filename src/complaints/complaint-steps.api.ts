import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { ComplaintStepForm, WithdrawForm } from './complaint.form.js';
import { TakeComplaintStep, type StepTakenAnswer } from './take-complaint-step.js';
import { WithdrawComplaint } from './withdraw-complaint.js';
import { WithdrawComplaintStep } from './withdraw-complaint-step.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';

@ApiTags('complaints')
@Controller('api')
export class ComplaintStepsApi {
  constructor(
    private readonly takeStep: TakeComplaintStep,
    private readonly withdrawStep: WithdrawComplaintStep,
    private readonly withdrawComplaint: WithdrawComplaint,
  ) {}

  @Post('complaints/:id/steps')
  @May('handle-complaints')
  @ApiOperation({ summary: 'Quality looks into it, records cause or action, answers, closes or reopens it' })
  @ApiCreatedResponse({ schema: { example: { id, complaintId: id, number: 'C-2026-000001', status: 'answered' } } })
  step(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) complaintId: string,
    @Body() form: ComplaintStepForm,
  ): Promise<StepTakenAnswer> {
    return this.takeStep.execute(asked, complaintId, form);
  }

  @Post('complaint-steps/:id/withdrawal')
  @May('handle-complaints')
  @ApiOperation({ summary: 'A step was not taken, or was written down wrongly' })
  @ApiCreatedResponse({ schema: { example: { complaintId: id, status: 'looking-into' } } })
  withdrawalOfStep(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) stepId: string, @Body() form: WithdrawForm) {
    return this.withdrawStep.execute(asked, stepId, form);
  }

  @Post('complaints/:id/withdrawal')
  @May('handle-complaints')
  @ApiOperation({ summary: 'A complaint was taken in twice, or wrongly' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  withdrawal(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) complaintId: string,
    @Body() form: WithdrawForm,
  ): Promise<{ readonly id: string }> {
    return this.withdrawComplaint.execute(asked, complaintId, form);
  }
}
