import { Body, Controller, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { AddGrade } from './add-grade.js';
import { AddPackFormat } from './add-pack-format.js';
import { AddGradeForm, AddPackFormatForm, LetFormatTakeGradeForm, SetSpecificationForm } from './grade.form.js';
import { LetFormatTakeGrade } from './let-format-take-grade.js';
import { SetSpecification } from './set-specification.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';

@ApiTags('plant')
@Controller('api/plant')
export class GradeApi {
  constructor(
    private readonly addGrade: AddGrade,
    private readonly setSpecification: SetSpecification,
    private readonly addPackFormat: AddPackFormat,
    private readonly letFormatTakeGrade: LetFormatTakeGrade,
  ) {}

  @Post('grades')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Set up a grade' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  grade(@Asking() asked: Asked, @Body() form: AddGradeForm): Promise<{ readonly id: string }> {
    return this.addGrade.execute(asked, form);
  }

  @Post('specifications')
  @May('decide')
  @ApiOperation({ summary: 'What a grade’s results must be, from an instant on' })
  @ApiCreatedResponse({ schema: { example: { id, validFrom: '2026-03-12T06:00:00.000Z' } } })
  specification(@Asking() asked: Asked, @Body() form: SetSpecificationForm) {
    return this.setSpecification.execute(asked, form);
  }

  @Post('formats')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Set up a pack format' })
  @ApiCreatedResponse({ schema: { example: { id, gtin: '09520123000103' } } })
  format(@Asking() asked: Asked, @Body() form: AddPackFormatForm) {
    return this.addPackFormat.execute(asked, form);
  }

  @Post('format-grades')
  @May('set-up-plant')
  @ApiOperation({ summary: 'A format takes one grade more' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  take(@Asking() asked: Asked, @Body() form: LetFormatTakeGradeForm): Promise<{ readonly id: string }> {
    return this.letFormatTakeGrade.execute(asked, form);
  }
}
