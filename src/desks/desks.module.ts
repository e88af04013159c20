import { Module } from '@nestjs/common';
import { TodayModule } from './today/today.module.js';
import { SetUpModule } from './set-up/set-up.module.js';
import { DryerDeskModule } from './dryer/dryer-desk.module.js';
import './desks.sentences.js';
import './desks.sentences.es.js';
import { CorrectionsDeskModule } from './corrections/corrections-desk.module.js';
import { DeviceDeskModule } from './device/device-desk.module.js';
import { DispatchDeskModule } from './dispatch/dispatch-desk.module.js';
import { HandSamplesDeskModule } from './hand-samples/hand-samples-desk.module.js';
import { LineChecksDeskModule } from './line-checks/line-checks-desk.module.js';
import { LineDeskModule } from './line/line-desk.module.js';
import { PaperFormsModule } from './paper-forms/paper-forms.module.js';
import { FindThread } from './find-thread.js';
import { SearchController } from './search.controller.js';
import { CodeThreadApi } from './thread.api.js';

@Module({
  imports: [
    CorrectionsDeskModule,
    DeviceDeskModule,
    DispatchDeskModule,
    HandSamplesDeskModule,
    LineDeskModule,
    LineChecksDeskModule,
    DryerDeskModule,
    PaperFormsModule,
    SetUpModule,
    TodayModule,
  ],
  controllers: [SearchController, CodeThreadApi],
  providers: [FindThread],
})
export class DesksModule {}
