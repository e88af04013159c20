import { Body, Controller, Param, ParseUUIDPipe, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { Asked } from '../journal/entry-draft.js';
import { partProof } from '../people/proof.form.js';
import { ProveAgain } from '../people/prove-again.js';
import { withRetryAfter } from '../people/sign-in-place.js';
import { May } from '../platform/actor.js';
import { Asking, type HouseRequest } from '../platform/web/request.js';
import { AnswerRecall, WithdrawRecallAnswer } from './answer-recall.js';
import { HoldRecall, type RecallHeld } from './hold-recall.js';
import { HoldRecallForm, RecallAnswerForm, SignRecallForm, WithdrawRecallAnswerForm } from './recall.form.js';
import { SignRecall, type RecallSignedAnswer } from './sign-recall.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const number = 'EX-2026-000001';
const done = { schema: { example: { id } } };

@ApiTags('recalls')
@Controller('api')
export class RecallStepsApi {
  constructor(
    private readonly answerRecall: AnswerRecall,
    private readonly withdrawAnswer: WithdrawRecallAnswer,
    private readonly holdRecall: HoldRecall,
    private readonly signRecall: SignRecall,
    private readonly proveAgain: ProveAgain,
  ) {}

  @Post('recalls/:id/answers')
  @May('run-recalls')
  @ApiOperation({ summary: 'What a customer says became of what it got' })
  @ApiCreatedResponse(done)
  answer(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) recallId: string,
    @Body() form: RecallAnswerForm,
  ): Promise<{ readonly id: string }> {
    return this.answerRecall.execute(asked, recallId, form);
  }

  @Post('recall-answers/:id/withdrawal')
  @May('run-recalls')
  @ApiOperation({ summary: 'An answer was not given, or was entered wrongly' })
  @ApiCreatedResponse(done)
  withdrawal(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) answerId: string,
    @Body() form: WithdrawRecallAnswerForm,
  ): Promise<{ readonly id: string }> {
    return this.withdrawAnswer.execute(asked, answerId, form);
  }

  @Post('recalls/:id/holds')
  @May('run-recalls')
  @ApiOperation({ summary: 'Place the holds that a recall proposes; an exercise places none' })
  @ApiCreatedResponse({ schema: { example: { recallId: id, number: 'RC-2026-000001', holds: [] } } })
  hold(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) recallId: string,
    @Body() form: HoldRecallForm,
  ): Promise<RecallHeld> {
    return this.holdRecall.execute(asked, recallId, form);
  }

  @Post('recalls/:id/signing')
  @May('run-recalls')
  @ApiOperation({ summary: 'Close a recall and sign its figures, having proved once more who signs' })
  @ApiCreatedResponse({ schema: { example: { id, number } } })
  async sign(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) recallId: string,
    @Body() form: SignRecallForm,
    @Req() request: HouseRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<RecallSignedAnswer> {
    const { proof, rest } = partProof(form);
    await withRetryAfter(reply, this.proveAgain.execute(asked.actor, proof, { address: request.ip }));
    return this.signRecall.execute(asked, recallId, rest);
  }
}
