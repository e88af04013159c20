import { Module } from '@nestjs/common';
import { APP_INTERCEPTOR } from '@nestjs/core';
import { CountInterruptions } from './count-interruptions.js';
import { ExplainPoint } from './explain-point.js';
import { InterruptionController } from './interruption.controller.js';
import './interruptions.sentences.js';
import './interruptions.sentences.es.js';
import { LookAtScales } from './look-at-scales.js';
import { OpenPointApi } from './open-point.api.js';
import { OpenPointController } from './open-point.controller.js';
import './open-points.sentences.js';
import './open-points.sentences.es.js';
import { ShelvePoint } from './shelve-point.js';
import { ShowBanners } from './show-banners.js';

@Module({
  controllers: [OpenPointController, OpenPointApi, InterruptionController],
  providers: [
    ExplainPoint,
    ShelvePoint,
    LookAtScales,
    CountInterruptions,
    { provide: APP_INTERCEPTOR, useClass: ShowBanners },
  ],
  exports: [ExplainPoint, LookAtScales],
})
export class OpenPointsModule {}
