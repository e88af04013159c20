import { Module } from '@nestjs/common';
import { PeopleModule } from '../people/people.module.js';
import { AssignGrade } from './assign-grade.js';
import { BagController } from './bag.controller.js';
import { DecideOnBags } from './decide-on-bags.js';
import { Decide } from './decide.js';
import { DecisionSubjects } from './decision-subjects.js';
import { ChangeReviewApi } from './change-review.api.js';
import { DecisionApi } from './decision.api.js';
import './disposition.sentences.js';
import './disposition.sentences.es.js';
import { HoldApi } from './hold.api.js';
import { LiftHold } from './lift-hold.js';
import { ReviewChanges } from './review-changes.js';
import { SetHoldClass } from './set-hold-class.js';
import { WidenHold } from './widen-hold.js';
import { WatchResults } from './watch-results.js';

const commands = [
  Decide,
  DecideOnBags,
  ReviewChanges,
  AssignGrade,
  SetHoldClass,
  LiftHold,
  WidenHold,
  DecisionSubjects,
];

@Module({
  imports: [PeopleModule],
  controllers: [DecisionApi, ChangeReviewApi, HoldApi, BagController],
  providers: [...commands, WatchResults],
  exports: commands,
})
export class DispositionModule {}
