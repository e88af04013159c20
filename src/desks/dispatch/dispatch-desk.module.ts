import { Module } from '@nestjs/common';
import { DispatchModule } from '../../dispatch/dispatch.module.js';
import { DockController } from '../dock/dock.controller.js';
import { AtVehicleController } from './at-vehicle.controller.js';
import { DispatchClosingController } from './closing.controller.js';
import './dispatch-desk.sentences.js';
import './dispatch-desk.sentences.es.js';
import { DispatchDesk } from './dispatch-desk.js';
import { DispatchController } from './dispatch.controller.js';
import { DockActs } from './dock-acts.js';
import { DispatchLoadingController } from './loading.controller.js';
import { DispatchReturnController } from './return.controller.js';
import { DispatchStockController } from './stock.controller.js';

@Module({
  imports: [DispatchModule],
  controllers: [
    DispatchStockController,
    DispatchController,
    DispatchLoadingController,
    DispatchClosingController,
    DispatchReturnController,
    AtVehicleController,
    DockController,
  ],
  providers: [DispatchDesk, DockActs],
})
export class DispatchDeskModule {}
