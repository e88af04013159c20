import { Module } from '@nestjs/common';
import { APP_INTERCEPTOR } from '@nestjs/core';
import { CountInterruptions } from './count-interruptions.js';
import { ExplainPoint } from './explain-point.js';
import { InterruptionController } from './interruption.controller.js';
import './interruptions.sentences.js';
import './interruptions.sentences.es.js';
import { KeepEntries } from './keep-entries.interceptor.js';
import { KeepEntry } from './keep-entry.js';
import { KeptEntryController } from './kept-entry.controller.js';
import './kept-entry.sentences.es.js';
import './kept-entry.sentences.js';
import { LookAtScales } from './look-at-scales.js';
import { OpenPointApi } from './open-point.api.js';
import { OpenPointController } from './open-point.controller.js';
import './open-points.sentences.js';
import './open-points.sentences.es.js';
import { ShelvePoint } from './shelve-point.js';
import { ShowBanners } from './show-banners.js';

@Module({
  controllers: [OpenPointController, OpenPointApi, InterruptionController, KeptEntryController],
  providers: [
    ExplainPoint,
    ShelvePoint,
    LookAtScales,
    CountInterruptions,
    KeepEntry,
    { provide: APP_INTERCEPTOR, useClass: KeepEntries },
    { provide: APP_INTERCEPTOR, useClass: ShowBanners },
  ],
  exports: [ExplainPoint, KeepEntry, LookAtScales],
})
export class OpenPointsModule {}
