import { Body, Controller, Get, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiExcludeController, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { ComplaintTaken } from '../../complaints/take-complaint.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { IntakeForm, IntakeQuery } from './complaint-page.form.js';
import { intakePage } from './intake.page.js';
import { ReadByCustomer } from './read-by-customer.js';
import { TakeByCode } from './take-by-code.js';

/** Taking a complaint in, on the telephone. */
@ApiExcludeController()
@Controller('quality/complaints')
export class IntakeController {
  constructor(
    private readonly takeByCode: TakeByCode,
    private readonly readByCustomer: ReadByCustomer,
  ) {}

  @Get('new')
  @May('take-complaints')
  form(@Looking() viewer: Viewer, @Query() query: IntakeQuery): VNode {
    return intakePage({ viewer, code: query.code ?? '', findings: [], trouble: null });
  }

  @Post('new')
  @May('take-complaints')
  take(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: IntakeForm,
      times: ['receivedAt'],
      timeZone: viewer.timeZone,
      act: (form) => this.takeByCode.execute(asked, form),
      next: ({ id }) => `/quality/complaints/${id}`,
      says: ({ number }) => ({ code: 'said-complaint-taken', facts: { complaint: number } }),
      again: (trouble) => this.again(viewer, trouble),
    });
  }

  private async again(viewer: Viewer, trouble: FormTrouble): Promise<VNode> {
    const entered = trouble.entered['codeAsRead'];
    const code = typeof entered === 'string' ? entered : '';
    const isAsked = trouble.code === 'complaint-code-which';
    const findings = isAsked ? await this.readByCustomer.choices(viewer.actor.siteId, code) : [];
    return intakePage({ viewer, code, findings, trouble });
  }
}

@ApiTags('complaints')
@Controller('api/complaints')
export class IntakeApi {
  constructor(private readonly takeByCode: TakeByCode) {}

  @Post()
  @May('take-complaints')
  @ApiOperation({
    summary: 'Take a complaint in, by the code as the customer reads it or by the thing itself',
    description:
      'A code that fits several things is refused as complaint-code-which: ask GET /api/thread for the choices and send one as meant.',
  })
  @ApiCreatedResponse({
    schema: { example: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10', number: 'C-2026-000001', isLinked: true } },
  })
  take(@Asking() asked: Asked, @Body() form: IntakeForm): Promise<ComplaintTaken> {
    return this.takeByCode.execute(asked, form);
  }
}
