import { Module } from '@nestjs/common';
import { AddCheckPlan } from './add-check-plan.js';
import { ChangeCheckPlan } from './change-check-plan.js';
import { CheckLine } from './check-line.js';
import { CheckPlanApi } from './check-plan.api.js';
import { CorrectLineCheck } from './correct-line-check.js';
import { EndCheckPlan } from './end-check-plan.js';
import { LineCheckApi } from './line-check.api.js';
import './line-checks.sentences.js';
import './line-checks.sentences.es.js';
import { LookAtChecks } from './look-at-checks.js';

const commands = [AddCheckPlan, ChangeCheckPlan, EndCheckPlan, CheckLine, CorrectLineCheck];

@Module({
  controllers: [CheckPlanApi, LineCheckApi],
  providers: [...commands, LookAtChecks],
  exports: commands,
})
export class LineChecksModule {}
