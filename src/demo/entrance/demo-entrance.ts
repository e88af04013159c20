import { Module, type DynamicModule } from '@nestjs/common';
import type { DemoDevice } from '../set-up/demo-device.js';
import './entrance.sentences.es.js';
import './entrance.sentences.js';
import { DEMO_DEVICES, EntranceController } from './entrance.controller.js';

/** The page that lets a browser be a device of the demo. Nothing but the demo's own start builds it onto the house. */
@Module({})
export class DemoEntrance {
  static to(devices: readonly DemoDevice[]): DynamicModule {
    return {
      module: DemoEntrance,
      controllers: [EntranceController],
      providers: [{ provide: DEMO_DEVICES, useValue: devices }],
    };
  }
}
