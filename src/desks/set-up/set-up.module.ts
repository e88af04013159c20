import { Module } from '@nestjs/common';
import { PeopleModule } from '../../people/people.module.js';
import { PlantModule } from '../../plant/plant.module.js';
import { GoodsStepsController } from './goods-steps.controller.js';
import { MachineStepsController } from './machine-steps.controller.js';
import { PeopleStepsController } from './people-steps.controller.js';
import { PersonActs } from './person-acts.js';
import { SetUpPages } from './set-up-pages.js';
import { SetUpController } from './set-up.controller.js';
import './set-up.sentences.js';
import './set-up.sentences.es.js';
import { PapersStepController } from './papers-step.controller.js';
import { SiteStepsController } from './site-steps.controller.js';
import { TradeStepsController } from './trade-steps.controller.js';
import { UsualNetController } from './usual-net.controller.js';

@Module({
  imports: [PlantModule, PeopleModule],
  controllers: [
    SiteStepsController,
    PapersStepController,
    MachineStepsController,
    GoodsStepsController,
    TradeStepsController,
    UsualNetController,
    PeopleStepsController,
    SetUpController,
  ],
  providers: [SetUpPages, PersonActs],
})
export class SetUpModule {}
