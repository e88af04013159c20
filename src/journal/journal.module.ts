import { Global, Module } from '@nestjs/common';
import { Housekeeping } from './housekeeping.js';
import { JournalApi } from './journal.api.js';
import { JournalController } from './journal.controller.js';
import './journal.sentences.js';
import './journal.sentences.es.js';
import { RecordChange } from './record-change.js';

@Global()
@Module({
  controllers: [JournalController, JournalApi],
  providers: [RecordChange, Housekeeping],
  exports: [RecordChange],
})
export class JournalModule {}
