import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { AccountSpanForm, CorrectAccountForm, SignAccountForm } from './account.form.js';
import { settleSpan } from './account-span.js';
import { hashOfAccount } from './account-text.js';
import type { AccountView } from './account-view.js';
import { accountPage, accountWithCorrections, type AccountRow, type AccountWithCorrections } from './accounts.js';
import { CorrectAccount } from './correct-account.js';
import { draftAccount } from './draft-account.js';
import { SignAccount, type SignedAnswer } from './sign-account.js';

const figures = {
  fromAt: '2026-03-12T05:00:00.000Z',
  untilAt: '2026-03-12T13:00:00.000Z',
  inGrams: 5_163_500,
  outGrams: 5_161_940,
  differenceGrams: 1_560,
  verdict: 'closes',
};
const signed = {
  id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10',
  number: 'AC-2026-000012',
  ...figures,
  journalHead: '9f2c…64 hexadecimal digits',
};
const line = {
  side: 'in',
  kind: 'bag-tipped',
  recordId: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a11',
  code: '4182-K',
  at: '2026-03-12T05:20:00.000Z',
  grams: 996_500,
  basis: 'measured',
  standardMilligrams: 204_124,
  sharedBy: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a12',
  sharedStandardMilligrams: 577_350,
  isDoubtful: false,
  packs: null,
};
const draft = { contentHash: '51d0…64 hexadecimal digits', account: { ...figures, lines: [line], suspects: [] } };

@ApiTags('accounts')
@Controller('api/accounts')
export class AccountApi {
  constructor(
    private readonly signAccount: SignAccount,
    private readonly correctAccount: CorrectAccount,
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Signed accounts, newest first; void ones too' })
  @ApiOkResponse({ schema: { example: { items: [signed], next: null } } })
  async list(@Acting() actor: Actor, @Query() page: PageQuery): Promise<Listed<AccountRow>> {
    const asked = pageOf(page);
    return listed(await accountPage(this.reader, actor.siteId, asked), asked);
  }

  @Get('draft')
  @May('read')
  @ApiOperation({ summary: 'The account of a hopper over a time as the records stand now; nothing is recorded' })
  @ApiOkResponse({ schema: { example: draft } })
  async draft(
    @Acting() actor: Actor,
    @Query() form: AccountSpanForm,
  ): Promise<{ contentHash: string; account: AccountView }> {
    const now = this.clock.now();
    return this.heavy.snapshot(async (from) => {
      const span = await settleSpan(from, actor.siteId, form, now);
      const account = await draftAccount(from, actor.siteId, span);
      return { contentHash: hashOfAccount(account), account };
    });
  }

  @Get(':id')
  @May('read')
  @ApiOperation({ summary: 'A signed account, and beside it what its records say now' })
  @ApiOkResponse({
    schema: { example: { ...signed, account: draft.account, since: { lines: [], hasChanged: false } } },
  })
  one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string): Promise<AccountWithCorrections> {
    return this.heavy.snapshot((from) => accountWithCorrections(from, actor.siteId, id));
  }

  @Post()
  @May('sign-accounts')
  @ApiOperation({ summary: 'Sign the account of a hopper over a time; it is closed against change' })
  @ApiCreatedResponse({ schema: { example: signed } })
  sign(@Asking() asked: Asked, @Body() form: SignAccountForm): Promise<SignedAnswer> {
    return this.signAccount.execute(asked, form);
  }

  @Post(':id/correction')
  @May('sign-accounts')
  @ApiOperation({ summary: 'Declare a signed account void; its number is kept, and another may be signed' })
  @ApiCreatedResponse({ schema: { example: { id: signed.id, number: signed.number } } })
  correct(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectAccountForm,
  ): Promise<{ id: string; number: string }> {
    return this.correctAccount.execute(asked, id, form);
  }
}
