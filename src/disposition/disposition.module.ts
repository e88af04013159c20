import { Module } from '@nestjs/common';
import { PeopleModule } from '../people/people.module.js';
import { AssignGrade } from './assign-grade.js';
import { BagController } from './bag.controller.js';
import { Decide } from './decide.js';
import { DecisionSubjects } from './decision-subjects.js';
import { DecisionApi } from './decision.api.js';
import './disposition.sentences.js';
import { HoldApi } from './hold.api.js';
import { HoldController } from './hold.controller.js';
import { LiftHold } from './lift-hold.js';
import { SetHoldClass } from './set-hold-class.js';
import { WatchResults } from './watch-results.js';

const commands = [Decide, AssignGrade, SetHoldClass, LiftHold, DecisionSubjects];

@Module({
  imports: [PeopleModule],
  controllers: [DecisionApi, HoldApi, BagController, HoldController],
  providers: [...commands, WatchResults],
  exports: commands,
})
export class DispositionModule {}
