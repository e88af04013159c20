import { Module } from '@nestjs/common';
import { DispositionModule } from '../../disposition/disposition.module.js';
import { LaboratoryModule } from '../../laboratory/laboratory.module.js';
import { OpenPointsModule } from '../../open-points/open-points.module.js';
import { PeopleModule } from '../../people/people.module.js';
import { TracingModule } from '../../tracing/tracing.module.js';
import { ChangesController } from './changes.controller.js';
import { BagDecisionController } from './decision.controller.js';
import { QualityDeskController } from './desk.controller.js';
import { HoldNewController } from './hold-new.controller.js';
import { HoldFiles } from './hold-file.js';
import { HoldFileController } from './hold.controller.js';
import { LiftOnPage } from './lift-on-page.js';
import { NarrowController } from './narrow.controller.js';
import './hold-times.sentences.es.js';
import './hold-times.sentences.js';
import './narrowing-pages.sentences.es.js';
import './narrowing-pages.sentences.js';
import { PointController } from './point.controller.js';
import './quality.sentences.es.js';
import './quality.sentences.js';
import { PlantReachController } from './reach.controller.js';
import { ResultsController } from './results.controller.js';
import { UnitDecisionController } from './unit-decision.controller.js';

/** The desk of the quality officer, and the analyst's entry of results. */
@Module({
  imports: [PeopleModule, OpenPointsModule, LaboratoryModule, DispositionModule, TracingModule],
  controllers: [
    QualityDeskController,
    BagDecisionController,
    UnitDecisionController,
    HoldNewController,
    NarrowController,
    HoldFileController,
    ChangesController,
    ResultsController,
    PointController,
    PlantReachController,
  ],
  providers: [HoldFiles, LiftOnPage],
})
export class QualityDeskModule {}
