import { Module } from '@nestjs/common';
import { AccountApi } from './account.api.js';
import { AccountController } from './account.controller.js';
import { CorrectAccount } from './correct-account.js';
import './reconciliation.sentences.js';
import { SignAccount } from './sign-account.js';

@Module({
  controllers: [AccountApi, AccountController],
  providers: [SignAccount, CorrectAccount],
  exports: [SignAccount, CorrectAccount],
})
export class ReconciliationModule {}
