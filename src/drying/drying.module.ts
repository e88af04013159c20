import { Module } from '@nestjs/common';
import { BagFillApi } from './bag-fill.api.js';
import { BagApi } from './bag.api.js';
import { CloseBag } from './close-bag.js';
import { CorrectBag } from './correct-bag.js';
import { CorrectWeighing } from './correct-weighing.js';
import { DryerRunApi } from './dryer-run.api.js';
import './bag-label.sentences.js';
import './bag-label.sentences.es.js';
import './drying.sentences.js';
import './drying.sentences.es.js';
import './usual-weights.sentences.js';
import './usual-weights.sentences.es.js';
import { EndDryerRun } from './end-dryer-run.js';
import { FillBag } from './fill-bag.js';
import { MoveBag } from './move-bag.js';
import { PrintBagLabel } from './print-bag-label.js';
import { ReceiptApi } from './receipt.api.js';
import { ReceiveBags } from './receive-bags.js';
import { RecordOpeningStock } from './record-opening-stock.js';
import { ReweighBag } from './reweigh-bag.js';
import { StartBag } from './start-bag.js';
import { StartDryerRun } from './start-dryer-run.js';
import { WeighingApi } from './weighing.api.js';

const commands = [
  StartDryerRun,
  EndDryerRun,
  StartBag,
  CloseBag,
  FillBag,
  ReceiveBags,
  RecordOpeningStock,
  ReweighBag,
  CorrectWeighing,
  MoveBag,
  CorrectBag,
  PrintBagLabel,
];

@Module({
  controllers: [DryerRunApi, BagFillApi, BagApi, WeighingApi, ReceiptApi],
  providers: commands,
  exports: commands,
})
export class DryingModule {}
