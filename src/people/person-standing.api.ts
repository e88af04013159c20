import { Body, Controller, Delete, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { EndRole } from './end-role.js';
import { GiveBadge, type GivenBadge } from './give-badge.js';
import { GiveOneTimePassword, type OneTimePassword } from './give-one-time-password.js';
import { GiveRole } from './give-role.js';
import { RoleForm, RolePath } from './person.form.js';

const personId = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';

/** What a person may do, and by what they prove who they are, as an administrator gives it. */
@ApiTags('people')
@Controller('api/people')
export class PersonStandingApi {
  constructor(
    private readonly giveRole: GiveRole,
    private readonly endRole: EndRole,
    private readonly givePassword: GiveOneTimePassword,
    private readonly giveABadge: GiveBadge,
  ) {}

  @Post(':id/roles')
  @May('keep-people')
  @ApiOperation({ summary: 'Give a person a role' })
  @ApiCreatedResponse({ schema: { example: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a33', role: 'line-lead' } } })
  give(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: RoleForm,
  ): Promise<{ id: string; role: string }> {
    return this.giveRole.execute(asked, id, form);
  }

  @Delete(':id/roles/:role')
  @May('keep-people')
  @ApiOperation({ summary: 'End a person’s role' })
  end(@Asking() asked: Asked, @Param() { id, role }: RolePath): Promise<{ id: string }> {
    return this.endRole.execute(asked, id, { role });
  }

  @Post(':id/password')
  @May('keep-people')
  @ApiOperation({ summary: 'Give a person a one-time password; it is answered once and must be changed at first use' })
  @ApiCreatedResponse({ schema: { example: { personId, password: 'k7vd-m2hp-xr4n-8wqt' } } })
  password(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string): Promise<OneTimePassword> {
    return this.givePassword.execute(asked, id);
  }

  @Post(':id/badge')
  @May('keep-people')
  @ApiOperation({ summary: 'Give a person a badge; its text is answered once, to be printed; the one before ends' })
  @ApiCreatedResponse({ schema: { example: { personId, badge: 'MFRGGZDFMZTWQ2LKNNWG23TPOA' } } })
  badge(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string): Promise<GivenBadge> {
    return this.giveABadge.execute(asked, id);
  }
}
