import { Body, Controller, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { AddDryer } from './add-dryer.js';
import { AddHopper } from './add-hopper.js';
import { AddPackingLine } from './add-packing-line.js';
import { LinkHopperToLine } from './link-hopper-to-line.js';
import { AddDryerForm, AddHopperForm, AddPackingLineForm, LinkHopperToLineForm } from './machine.form.js';

const added = { schema: { example: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10' } } };
const versioned = { schema: { example: { ...added.schema.example, validFrom: '2026-03-12T06:00:00.000Z' } } };

@ApiTags('plant')
@Controller('api/plant')
export class MachinesApi {
  constructor(
    private readonly addDryer: AddDryer,
    private readonly addHopper: AddHopper,
    private readonly addPackingLine: AddPackingLine,
    private readonly linkHopperToLine: LinkHopperToLine,
  ) {}

  @Post('dryers')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Set up a dryer' })
  @ApiCreatedResponse(added)
  dryer(@Asking() asked: Asked, @Body() form: AddDryerForm): Promise<{ readonly id: string }> {
    return this.addDryer.execute(asked, form);
  }

  @Post('hoppers')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Set up a hopper' })
  @ApiCreatedResponse(added)
  hopper(@Asking() asked: Asked, @Body() form: AddHopperForm): Promise<{ readonly id: string }> {
    return this.addHopper.execute(asked, form);
  }

  @Post('lines')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Set up a packing line' })
  @ApiCreatedResponse(added)
  line(@Asking() asked: Asked, @Body() form: AddPackingLineForm): Promise<{ readonly id: string }> {
    return this.addPackingLine.execute(asked, form);
  }

  @Post('hopper-lines')
  @May('set-up-plant')
  @ApiOperation({ summary: 'A line is fed by a hopper, or by none, from an instant on' })
  @ApiCreatedResponse(versioned)
  link(@Asking() asked: Asked, @Body() form: LinkHopperToLineForm) {
    return this.linkHopperToLine.execute(asked, form);
  }
}
