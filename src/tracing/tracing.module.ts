import { Module } from '@nestjs/common';
import { HoldReachApi } from './hold-reach.api.js';
import { PlaceHold } from './place-hold.js';
import { ThreadApi } from './thread.api.js';
import './tracing.sentences.js';

@Module({ controllers: [ThreadApi, HoldReachApi], providers: [PlaceHold] })
export class TracingModule {}
