import { Module } from '@nestjs/common';
import { LineChecksModule } from '../../line-checks/line-checks.module.js';
import { TracingModule } from '../../tracing/tracing.module.js';
import { CheckLogController } from './check-log.controller.js';
import { CheckPlansController } from './check-plans.controller.js';
import './check-pages.sentences.js';
import './check-pages.sentences.es.js';
import { DoCheckController } from './do-check.controller.js';

@Module({
  imports: [LineChecksModule, TracingModule],
  controllers: [DoCheckController, CheckLogController, CheckPlansController],
})
export class LineChecksDeskModule {}
