import { Module } from '@nestjs/common';
import { DevicePagesController } from './device.controller.js';
import './device.sentences.es.js';
import './device.sentences.js';
import { LineBagsApi } from './line-bags.api.js';
import { SizeController } from './size.controller.js';

@Module({ controllers: [SizeController, DevicePagesController, LineBagsApi] })
export class DeviceDeskModule {}
