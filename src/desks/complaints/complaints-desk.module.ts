import { Module } from '@nestjs/common';
import { ComplaintsModule } from '../../complaints/complaints.module.js';
import { ComplaintActsController } from './complaint-acts.controller.js';
import { ComplaintFiles } from './complaint-file.js';
import { ComplaintPages } from './complaint-pages.js';
import { ComplaintController } from './complaint.controller.js';
import './complaints-desk.sentences.es.js';
import './complaints-desk.sentences.js';
import { IntakeApi, IntakeController } from './intake.controller.js';
import { ReadByCustomer } from './read-by-customer.js';
import { TakeByCode } from './take-by-code.js';

/** Complaints on the quality officer's desk, and their intake by whoever answers the telephone. */
@Module({
  imports: [ComplaintsModule],
  controllers: [IntakeController, IntakeApi, ComplaintController, ComplaintActsController],
  providers: [ComplaintFiles, ComplaintPages, ReadByCustomer, TakeByCode],
})
export class ComplaintsDeskModule {}
