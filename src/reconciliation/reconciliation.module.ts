import { Module } from '@nestjs/common';
import { AccountApi } from './account.api.js';
import { AccountController } from './account.controller.js';
import { CorrectAccount } from './correct-account.js';
import './reconciliation.sentences.js';
import './reconciliation.sentences.es.js';
import { ConfirmOpening } from './confirm-opening.js';
import { HandoverApi } from './handover.api.js';
import './handover.sentences.js';
import './handover.sentences.es.js';
import { SignHandover } from './sign-handover.js';
import { SignAccount } from './sign-account.js';

@Module({
  controllers: [AccountApi, HandoverApi, AccountController],
  providers: [SignAccount, CorrectAccount, SignHandover, ConfirmOpening],
  exports: [SignAccount, CorrectAccount, SignHandover, ConfirmOpening],
})
export class ReconciliationModule {}
