import { Module } from '@nestjs/common';
import { PeopleModule } from '../people/people.module.js';
import { AnswerRecall, WithdrawRecallAnswer } from './answer-recall.js';
import { HoldRecall } from './hold-recall.js';
import { MarkRecall } from './mark-recall.js';
import { OpenRecall } from './open-recall.js';
import { RecallOrigins } from './recall-origins.js';
import { RecallApi } from './recall.api.js';
import { RecallStepsApi } from './recall-steps.api.js';
import './recalls.sentences.js';
import './recalls.sentences.es.js';
import { SignRecall } from './sign-recall.js';

const commands = [OpenRecall, MarkRecall, AnswerRecall, WithdrawRecallAnswer, HoldRecall, SignRecall];

@Module({
  imports: [PeopleModule],
  controllers: [RecallApi, RecallStepsApi],
  providers: [...commands, RecallOrigins],
  exports: [...commands, RecallOrigins],
})
export class RecallsModule {}
