import { Global, Module } from '@nestjs/common';
import { EventsController } from './events.controller.js';
import { Housekeeping } from './housekeeping.js';
import { JournalApi } from './journal.api.js';
import { JournalController } from './journal.controller.js';
import './actions.sentences.es.js';
import './actions.sentences.js';
import './content-names.sentences.es.js';
import './content-names.sentences.js';
import './entry-text.sentences.es.js';
import './entry-text.sentences.js';
import './happening.sentences.es.js';
import './happening.sentences.js';
import './journal.sentences.js';
import './journal.sentences.es.js';
import { JournalNews } from './journal-news.js';
import { RecordChange } from './record-change.js';

@Global()
@Module({
  controllers: [JournalController, JournalApi, EventsController],
  providers: [RecordChange, Housekeeping, JournalNews],
  exports: [RecordChange],
})
export class JournalModule {}
