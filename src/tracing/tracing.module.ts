import { Module } from '@nestjs/common';
import './check-holds.sentences.js';
import './check-holds.sentences.es.js';
import { HoldReachApi } from './hold-reach.api.js';
import { HoldSinceLastGood } from './hold-since-last-good.js';
import { PlaceHold } from './place-hold.js';
import { ThreadApi } from './thread.api.js';
import './tracing.sentences.js';
import './tracing.sentences.es.js';

@Module({
  controllers: [ThreadApi, HoldReachApi],
  providers: [PlaceHold, HoldSinceLastGood],
  exports: [PlaceHold, HoldSinceLastGood],
})
export class TracingModule {}
