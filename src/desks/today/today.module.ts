import { Module } from '@nestjs/common';
import { TodayController } from './today.controller.js';
import './today.sentences.js';
import './today.sentences.es.js';

@Module({ controllers: [TodayController] })
export class TodayModule {}
