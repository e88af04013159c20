import { Module } from '@nestjs/common';
import { DispositionModule } from '../disposition/disposition.module.js';
import { PeopleModule } from '../people/people.module.js';
import './check-holds.sentences.js';
import './check-holds.sentences.es.js';
import { HoldReachApi } from './hold-reach.api.js';
import { HoldSinceLastGood } from './hold-since-last-good.js';
import { NarrowHold } from './narrow-hold.js';
import { NarrowingApi } from './narrowing.api.js';
import './narrowing.sentences.js';
import './narrowing.sentences.es.js';
import { PlaceHold } from './place-hold.js';
import { ThreadApi } from './thread.api.js';
import './tracing.sentences.js';
import './tracing.sentences.es.js';
import { WatchReach } from './watch-reach.js';

@Module({
  imports: [PeopleModule, DispositionModule],
  controllers: [ThreadApi, HoldReachApi, NarrowingApi],
  providers: [PlaceHold, HoldSinceLastGood, NarrowHold, WatchReach],
  exports: [PlaceHold, HoldSinceLastGood, NarrowHold],
})
export class TracingModule {}
