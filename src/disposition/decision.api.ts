import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { findBag } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { laboratoryStandingOf, type LaboratoryStanding } from '../laboratory/bag-results.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { AssignGrade, type AssignedGrade } from './assign-grade.js';
import { DecideOnBags, type BagsDecidedOn } from './decide-on-bags.js';
import { Decide, type DecisionAnswer } from './decide.js';
import { AssignGradeForm, DecideForm, DecideOnBagsForm } from './decision.form.js';
import { bagStandingOf, type BagStanding } from './standings.js';
import { stateWord, type StateWord } from './worst-state.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const decidedAt = '2026-03-12T09:00:00.000Z';

/** A bag with quality and with the laboratory. */
interface WholeStanding extends BagStanding {
  readonly state: StateWord;
  readonly laboratory: LaboratoryStanding;
}

@ApiTags('quality')
@Controller('api')
export class DecisionApi {
  constructor(
    private readonly decide: Decide,
    private readonly decideOnBags: DecideOnBags,
    private readonly assignGrade: AssignGrade,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Post('decisions')
  @May('decide')
  @ApiOperation({ summary: 'Quality decides on a bag, a lot or a pallet' })
  @ApiCreatedResponse({
    schema: { example: { id, kind: 'bulk-bag', subjectId: id, verdict: 'released', decidedAt } },
  })
  decideOn(@Asking() asked: Asked, @Body() form: DecideForm): Promise<DecisionAnswer> {
    return this.decide.execute(asked, form);
  }

  @Post('decisions-on-bags')
  @May('decide')
  @ApiOperation({ summary: 'Quality decides on several bags at once: on all of them, or on none' })
  @ApiCreatedResponse({
    schema: { example: { verdict: 'released', decidedAt, bags: [{ id, number: 'B0012344', decisionId: id }] } },
  })
  decideOnSeveral(@Asking() asked: Asked, @Body() form: DecideOnBagsForm): Promise<BagsDecidedOn> {
    return this.decideOnBags.execute(asked, form);
  }

  @Post('grade-assignments')
  @May('decide')
  @ApiOperation({ summary: 'A bag is given another grade' })
  @ApiCreatedResponse({ schema: { example: { id, bagId: id, gradeId: id, verdict: 'waiting' } } })
  assign(@Asking() asked: Asked, @Body() form: AssignGradeForm): Promise<AssignedGrade> {
    return this.assignGrade.execute(asked, form);
  }

  @Get('bags/:id/standing')
  @May('read')
  @ApiOperation({ summary: 'How a bag stands: decision, holds, grade, results' })
  @ApiOkResponse({
    schema: {
      example: {
        state: 'released',
        decision: { verdict: 'released', reason: null, decidedAt },
        holds: [],
        gradeId: id,
        isOnHold: false,
        laboratory: { verdict: 'complete-and-within', missing: [], outside: [], results: [] },
      },
    },
  })
  async standing(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) bagId: string): Promise<WholeStanding> {
    const bag = await findBag(this.reader, actor.siteId, bagId);
    const standing = await bagStandingOf(this.reader, bag);
    const laboratory = await laboratoryStandingOf(this.reader, bag, standing.gradeId);
    return { ...standing, state: stateWord(standing.decision.verdict, standing.isOnHold), laboratory };
  }
}
