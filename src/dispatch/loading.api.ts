import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { CheckVehicle, type CheckAnswer } from './check-vehicle.js';
import { CountBlind, type CountAnswer } from './count-blind.js';
import { CheckVehicleForm } from './delivery.form.js';
import { LoadBag } from './load-bag.js';
import { CountBlindForm, LoadUnitForm, UnloadUnitForm } from './loading.form.js';
import { LoadPallet, type LoadAnswer } from './load-pallet.js';
import { oneUnit } from './one-unit.js';
import { UnloadUnit, type UnloadAnswer } from './unload-unit.js';

const loadedExample = {
  loadingId: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a12',
  place: 3,
  lines: [{ lineNumber: 1, name: 'White sugar 2 kg', orderedCount: 4800, loadedCount: 1440, leftCount: 3360 }],
};

/** What happens at the dock. */
@ApiTags('deliveries')
@Controller('api/deliveries/:id')
export class LoadingApi {
  constructor(
    private readonly checkVehicle: CheckVehicle,
    private readonly loadPallet: LoadPallet,
    private readonly loadBag: LoadBag,
    private readonly unloadUnit: UnloadUnit,
    private readonly countBlind: CountBlind,
  ) {}

  @Post('vehicle-checks')
  @May('load-vehicles')
  @ApiOperation({ summary: 'Record the check of the vehicle before loading' })
  check(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CheckVehicleForm,
  ): Promise<CheckAnswer> {
    return this.checkVehicle.execute(asked, id, form);
  }

  @Post('loadings')
  @May('load-vehicles')
  @ApiOperation({ summary: 'Load one pallet or one whole bag, or be told why it may not go' })
  @ApiCreatedResponse({ schema: { example: loadedExample } })
  load(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: LoadUnitForm,
  ): Promise<LoadAnswer> {
    const { kind, text } = oneUnit(form);
    const { loadedAt = null, reason = null } = form;
    return kind === 'pallet'
      ? this.loadPallet.execute(asked, id, { pallet: text, loadedAt, reason })
      : this.loadBag.execute(asked, id, { bag: text, loadedAt, reason });
  }

  @Post('unloadings')
  @May('load-vehicles')
  @ApiOperation({ summary: 'Take one unit off again' })
  unload(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: UnloadUnitForm,
  ): Promise<UnloadAnswer> {
    return this.unloadUnit.execute(asked, id, form);
  }

  @Post('blind-counts')
  @May('load-vehicles')
  @ApiOperation({ summary: 'Give the count of the units on the vehicle, counted by walking round without the list' })
  @ApiCreatedResponse({ schema: { example: { agrees: false, difference: null, countsSince: 1 } } })
  count(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CountBlindForm,
  ): Promise<CountAnswer> {
    return this.countBlind.execute(asked, id, form);
  }
}
