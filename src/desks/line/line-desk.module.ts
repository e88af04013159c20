import { Module } from '@nestjs/common';
import { HopperModule } from '../../hopper/hopper.module.js';
import { PackingModule } from '../../packing/packing.module.js';
import { PalletsModule } from '../../pallets/pallets.module.js';
import { PeopleModule } from '../../people/people.module.js';
import { ReconciliationModule } from '../../reconciliation/reconciliation.module.js';
import { TracingModule } from '../../tracing/tracing.module.js';
import { LineAccountController } from './account.controller.js';
import { LineChangeoverController } from './changeover.controller.js';
import { LineHandoverController } from './handover.controller.js';
import { LineLevelController } from './level.controller.js';
import { LineDesk } from './line-desk.js';
import { LineController } from './line.controller.js';
import './line.sentences.js';
import './line.sentences.es.js';
import './line-acts.sentences.js';
import './line-acts.sentences.es.js';
import './line-handover.sentences.js';
import './line-handover.sentences.es.js';
import { LinePalletController } from './pallet.controller.js';
import { LinePersonController } from './person.controller.js';
import { LineRemovalController } from './removal.controller.js';
import { LineRunController } from './run.controller.js';
import { LineStopController } from './stop.controller.js';
import { LineTipController } from './tip.controller.js';
import { LineUndoController } from './undo.controller.js';
import { UndoLast } from './undo-last.js';

@Module({
  imports: [HopperModule, PackingModule, PalletsModule, PeopleModule, ReconciliationModule, TracingModule],
  controllers: [
    LineController,
    LinePersonController,
    LineTipController,
    LinePalletController,
    LineStopController,
    LineRemovalController,
    LineRunController,
    LineLevelController,
    LineHandoverController,
    LineChangeoverController,
    LineUndoController,
    LineAccountController,
  ],
  providers: [LineDesk, UndoLast],
})
export class LineDeskModule {}
