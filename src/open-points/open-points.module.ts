import { Module } from '@nestjs/common';
import { ExplainPoint } from './explain-point.js';
import { LookAtScales } from './look-at-scales.js';
import { OpenPointApi } from './open-point.api.js';
import { OpenPointController } from './open-point.controller.js';
import './open-points.sentences.js';
import './open-points.sentences.es.js';

@Module({
  controllers: [OpenPointController, OpenPointApi],
  providers: [ExplainPoint, LookAtScales],
  exports: [ExplainPoint, LookAtScales],
})
export class OpenPointsModule {}
