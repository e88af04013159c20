import { Module } from '@nestjs/common';
import { DispositionModule } from '../disposition/disposition.module.js';
import { ChangeCode } from './change-code.js';
import { CloseRun } from './close-run.js';
import { CorrectCoderChange } from './correct-coder-change.js';
import { CorrectCount } from './correct-count.js';
import { CorrectFilmUse } from './correct-film-use.js';
import { CorrectLooseCount } from './correct-loose-count.js';
import { CorrectRemoval } from './correct-removal.js';
import { CorrectStop } from './correct-stop.js';
import { RunCorrectionApi } from './correction.api.js';
import { CountLoosePacks } from './count-loose-packs.js';
import { CountPacks } from './count-packs.js';
import { FitFilm } from './fit-film.js';
import { LineStopApi } from './line-stop.api.js';
import { FilmLotApi, LotApi } from './lot.api.js';
import { LotController } from './lot.controller.js';
import { PackingRunApi, RunRecordsApi } from './packing-run.api.js';
import './packing-pages.sentences.js';
import './packing-pages.sentences.es.js';
import './happened.sentences.es.js';
import './happened.sentences.js';
import './lot-label.sentences.js';
import './lot-label.sentences.es.js';
import './packing.sentences.js';
import './packing.sentences.es.js';
import { LotForDecision } from './lot-for-decision.js';
import { PrintLotLabel } from './print-lot-label.js';
import { RemovalApi } from './removal.api.js';
import { RemoveSugar } from './remove-sugar.js';
import { StartLineAgain } from './start-line-again.js';
import { StopLine } from './stop-line.js';

const commands = [
  ChangeCode,
  CloseRun,
  CorrectCoderChange,
  CorrectCount,
  CorrectFilmUse,
  CorrectLooseCount,
  CorrectRemoval,
  CorrectStop,
  CountLoosePacks,
  CountPacks,
  FitFilm,
  PrintLotLabel,
  RemoveSugar,
  StartLineAgain,
  StopLine,
];

@Module({
  imports: [DispositionModule],
  controllers: [
    PackingRunApi,
    RunRecordsApi,
    RunCorrectionApi,
    LineStopApi,
    RemovalApi,
    LotApi,
    FilmLotApi,
    LotController,
  ],
  providers: [...commands, LotForDecision],
  exports: commands,
})
export class PackingModule {}
