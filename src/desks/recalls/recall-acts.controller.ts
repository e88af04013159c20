import { Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { partProof } from '../../people/proof.form.js';
import { ProveAgain } from '../../people/prove-again.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { WithdrawRecallAnswer } from '../../recalls/answer-recall.js';
import { HoldRecall } from '../../recalls/hold-recall.js';
import { HoldRecallForm, SignRecallForm, WithdrawRecallAnswerForm } from '../../recalls/recall.form.js';
import { SignRecall } from '../../recalls/sign-recall.js';
import { RecallPages } from './recall-pages.js';

type Answer = Promise<VNode | TakenForScript | null>;

/** What is done to a recall once: its holds, its signature; and an answer taken back. */
@ApiExcludeController()
@Controller('quality/recalls')
export class RecallActsController {
  constructor(
    private readonly pages: RecallPages,
    private readonly withdrawAnswer: WithdrawRecallAnswer,
    private readonly holdRecall: HoldRecall,
    private readonly signRecall: SignRecall,
    private readonly proveAgain: ProveAgain,
  ) {}

  @Post(':id/answers/:answerId/withdrawal')
  @May('run-recalls')
  withdrawal(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Param('answerId', ParseUUIDPipe) answerId: string,
  ): Answer {
    return sent.take({
      form: WithdrawRecallAnswerForm,
      timeZone: viewer.timeZone,
      act: (form) => this.withdrawAnswer.execute(asked, answerId, form),
      next: () => `/quality/recalls/${id}`,
      says: () => ({ code: 'said-recall-answer-withdrawn', facts: {} }),
      again: (trouble) => this.pages.again(viewer, id, answerId, trouble),
    });
  }

  @Post(':id/holds')
  @May('run-recalls')
  hold(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: HoldRecallForm,
      timeZone: viewer.timeZone,
      act: (form) => this.holdRecall.execute(asked, id, form),
      next: () => `/quality/recalls/${id}`,
      says: ({ holds }) => ({ code: 'said-recall-held', facts: { count: holds.length } }),
      again: (trouble) => this.pages.again(viewer, id, 'holds', trouble),
    });
  }

  @Post(':id/signing')
  @May('run-recalls')
  sign(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: SignRecallForm,
      timeZone: viewer.timeZone,
      act: async (form) => {
        const { proof, rest } = partProof(form);
        await this.proveAgain.execute(asked.actor, proof, { address: sent.address });
        return this.signRecall.execute(asked, id, rest);
      },
      next: () => `/quality/recalls/${id}`,
      says: ({ number }) => ({ code: 'said-recall-signed', facts: { recall: number } }),
      again: (trouble) => this.pages.again(viewer, id, 'sign', trouble),
    });
  }
}
