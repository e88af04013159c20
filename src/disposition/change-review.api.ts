import { Body, Controller, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { ReviewChangesForm } from './change-review.form.js';
import { ReviewChanges } from './review-changes.js';

@ApiTags('quality')
@Controller('api/change-reviews')
export class ChangeReviewApi {
  constructor(private readonly reviewChanges: ReviewChanges) {}

  @Post()
  @May('decide')
  @ApiOperation({ summary: 'Quality has looked at late entries and corrections' })
  @ApiCreatedResponse({ schema: { example: { count: 3 } } })
  review(@Asking() asked: Asked, @Body() form: ReviewChangesForm): Promise<{ count: number }> {
    return this.reviewChanges.execute(asked, form);
  }
}
