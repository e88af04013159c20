import { Module } from '@nestjs/common';
import { HopperModule } from '../../hopper/hopper.module.js';
import { OpenPointsModule } from '../../open-points/open-points.module.js';
import { PackingModule } from '../../packing/packing.module.js';
import { PalletsModule } from '../../pallets/pallets.module.js';
import { LineChecksModule } from '../../line-checks/line-checks.module.js';
import { KeyInChecks } from './key-in-checks.js';
import { KeyInPacks } from './key-in-packs.js';
import { KeyInRows } from './key-in-rows.js';
import { KeyInStops } from './key-in-stops.js';
import { KeyInTips } from './key-in-tips.js';
import { PaperFormsController } from './paper-forms.controller.js';
import './paper-forms.sentences.js';
import './paper-forms.sentences.es.js';
import { PaperRowsController } from './paper-rows.controller.js';
import { PaperSheets } from './paper-sheets.js';
import { PaperStrikesController } from './paper-strikes.controller.js';
import { PrintPaperForm } from './print-paper-form.js';
import { KeepWrittenRow } from './keep-written-row.js';
import { StrikePaperRow } from './strike-paper-row.js';
import { TakeBackStrike } from './take-back-strike.js';

@Module({
  imports: [OpenPointsModule, HopperModule, LineChecksModule, PackingModule, PalletsModule],
  controllers: [PaperFormsController, PaperRowsController, PaperStrikesController],
  providers: [
    PaperSheets,
    PrintPaperForm,
    StrikePaperRow,
    KeyInTips,
    KeyInStops,
    KeyInPacks,
    KeyInChecks,
    KeepWrittenRow,
    KeyInRows,
    TakeBackStrike,
  ],
})
export class PaperFormsModule {}
