import { Body, Controller, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { SetRuleSetForm, SetShiftPatternForm } from './rules.form.js';
import { SetRuleSet } from './set-rule-set.js';
import { SetShiftPattern } from './set-shift-pattern.js';

const versioned = {
  schema: { example: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10', validFrom: '2026-03-12T06:00:00.000Z' } },
};

@ApiTags('plant')
@Controller('api/plant')
export class RulesApi {
  constructor(
    private readonly setShiftPattern: SetShiftPattern,
    private readonly setRuleSet: SetRuleSet,
  ) {}

  @Post('shift-patterns')
  @May('set-up-plant')
  @ApiOperation({ summary: 'The shifts, with crews or without, from an instant on' })
  @ApiCreatedResponse(versioned)
  shifts(@Asking() asked: Asked, @Body() form: SetShiftPatternForm) {
    return this.setShiftPattern.execute(asked, form);
  }

  @Post('rule-sets')
  @May('decide')
  @ApiOperation({ summary: 'The vehicle check, or the limits of tipping at risk, from an instant on' })
  @ApiCreatedResponse(versioned)
  rules(@Asking() asked: Asked, @Body() form: SetRuleSetForm) {
    return this.setRuleSet.execute(asked, form);
  }
}
