import { Injectable, type OnModuleInit } from '@nestjs/common';
import { findComplaint } from '../../complaints/complaints.js';
import { RecallOrigins } from '../../recalls/recall-origins.js';

/** A recall may begin with a complaint, and recalls do not know complaints: so the desk says how one is found. */
@Injectable()
export class ComplaintAsOrigin implements OnModuleInit {
  constructor(private readonly origins: RecallOrigins) {}

  onModuleInit(): void {
    this.origins.findComplaintsBy(findComplaint);
  }
}
