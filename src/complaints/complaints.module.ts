import { Module } from '@nestjs/common';
import { ClassComplaint } from './class-complaint.js';
import { ComplaintApi } from './complaint.api.js';
import { ComplaintStepsApi } from './complaint-steps.api.js';
import './complaints.sentences.js';
import './complaints.sentences.es.js';
import { LinkComplaint } from './link-complaint.js';
import { RemoveComplaintContact } from './remove-complaint-contact.js';
import { TakeComplaint } from './take-complaint.js';
import { TakeComplaintStep } from './take-complaint-step.js';
import { WithdrawComplaint } from './withdraw-complaint.js';
import { WithdrawComplaintStep } from './withdraw-complaint-step.js';

const commands = [
  TakeComplaint,
  LinkComplaint,
  ClassComplaint,
  TakeComplaintStep,
  WithdrawComplaintStep,
  WithdrawComplaint,
  RemoveComplaintContact,
];

@Module({ controllers: [ComplaintApi, ComplaintStepsApi], providers: commands, exports: commands })
export class ComplaintsModule {}
