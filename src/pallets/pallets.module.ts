import { Module, type OnModuleInit } from '@nestjs/common';
import { DispositionModule } from '../disposition/disposition.module.js';
import { PaperRenderers } from '../platform/printing/paper-renderers.js';
import { BuildPallet } from './build-pallet.js';
import { CheckPalletLabel } from './check-pallet-label.js';
import { CorrectPallet } from './correct-pallet.js';
import { LabelPallet } from './label-pallet.js';
import { LabelSwapApi } from './label-swap.api.js';
import { MergePallets } from './merge-pallets.js';
import { MovePallet } from './move-pallet.js';
import { PalletChangeApi } from './pallet-change.api.js';
import { PalletForDecision } from './pallet-for-decision.js';
import { PalletRecordApi } from './pallet-record.api.js';
import { PalletApi } from './pallet.api.js';
import { PalletController } from './pallet.controller.js';
import { palletLabel, palletLabelEdition, palletLabelKind, type PalletLabelFacts } from './pallet.label.js';
import { RestackPallet } from './restack-pallet.js';
import { SetSsccsAside } from './set-ssccs-aside.js';
import { SsccBlockApi } from './sscc-block.api.js';
import './sscc-block.sentences.es.js';
import './sscc-block.sentences.js';
import { SplitPallet } from './split-pallet.js';
import { SwapPalletLabels } from './swap-pallet-labels.js';
import { TakePalletApart } from './take-pallet-apart.js';
import './pallet-labels.sentences.js';
import './pallet-labels.sentences.es.js';
import './pallets.sentences.js';
import './pallets.sentences.es.js';

@Module({
  imports: [DispositionModule],
  controllers: [PalletApi, PalletChangeApi, PalletRecordApi, LabelSwapApi, SsccBlockApi, PalletController],
  providers: [
    BuildPallet,
    CheckPalletLabel,
    CorrectPallet,
    LabelPallet,
    MergePallets,
    MovePallet,
    PalletForDecision,
    RestackPallet,
    SetSsccsAside,
    SplitPallet,
    SwapPalletLabels,
    TakePalletApart,
  ],
  exports: [
    BuildPallet,
    CheckPalletLabel,
    CorrectPallet,
    LabelPallet,
    MergePallets,
    MovePallet,
    RestackPallet,
    SplitPallet,
    SwapPalletLabels,
    TakePalletApart,
  ],
})
export class PalletsModule implements OnModuleInit {
  constructor(private readonly renderers: PaperRenderers) {}

  onModuleInit(): void {
    this.renderers.add(palletLabelKind, palletLabelEdition, (facts, issuedAt) =>
      palletLabel(facts as PalletLabelFacts, issuedAt),
    );
  }
}
