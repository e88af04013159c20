import { Module } from '@nestjs/common';
import { PeopleModule } from '../../people/people.module.js';
import { RecallsModule } from '../../recalls/recalls.module.js';
import { ComplaintAsOrigin } from './complaint-as-origin.js';
import { RecallActsController } from './recall-acts.controller.js';
import { RecallFiles } from './recall-file.js';
import { RecallNewController } from './recall-new.controller.js';
import { RecallPages } from './recall-pages.js';
import { RecallController } from './recall.controller.js';
import './recalls-desk.sentences.es.js';
import './recalls-desk.sentences.js';

/** Recalls and exercises on the quality officer's desk. */
@Module({
  imports: [PeopleModule, RecallsModule],
  controllers: [RecallNewController, RecallController, RecallActsController],
  providers: [RecallFiles, RecallPages, ComplaintAsOrigin],
})
export class RecallsDeskModule {}
