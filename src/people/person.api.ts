import { Body, Controller, Delete, Get, Inject, Param, ParseUUIDPipe, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { AddPerson, type AddedPerson } from './add-person.js';
import { peopleOf, personOf, type PersonRow } from './people.js';
import { AddPersonForm, RenamePersonForm } from './person.form.js';
import { RemoveName } from './remove-name.js';
import { RenamePerson } from './rename-person.js';

const example = {
  id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10',
  code: 'jmoor',
  name: 'Jo Moor',
  language: 'en',
  roles: ['line-lead'],
  proofs: ['badge', 'password'],
};

@ApiTags('people')
@Controller('api/people')
export class PersonApi {
  constructor(
    private readonly addPerson: AddPerson,
    private readonly renamePerson: RenamePerson,
    private readonly removeName: RemoveName,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'The people of the site, newest first' })
  @ApiOkResponse({ schema: { example: { items: [example], next: null } } })
  async list(@Acting() actor: Actor, @Query() page: PageQuery): Promise<Listed<PersonRow>> {
    const asked = pageOf(page);
    return listed(await peopleOf(this.reader, actor.siteId, asked), asked);
  }

  @Get(':id')
  @May('read')
  @ApiOperation({ summary: 'One person' })
  @ApiOkResponse({ schema: { example } })
  one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string): Promise<PersonRow> {
    return personOf(this.reader, actor.siteId, id);
  }

  @Post()
  @May('keep-people')
  @ApiOperation({ summary: 'Add a person; roles and a first password are given next' })
  @ApiCreatedResponse({ schema: { example: { id: example.id, code: example.code } } })
  add(@Asking() asked: Asked, @Body() form: AddPersonForm): Promise<AddedPerson> {
    return this.addPerson.execute(asked, form);
  }

  @Put(':id/name')
  @May('keep-people')
  @ApiOperation({ summary: 'Rename a person; the journal holds that, not how' })
  rename(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: RenamePersonForm,
  ): Promise<{ id: string }> {
    return this.renamePerson.execute(asked, id, form);
  }

  @Delete(':id/name')
  @May('keep-people')
  @ApiOperation({ summary: 'Remove the name of somebody who has left, when its time is up' })
  remove(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string): Promise<{ id: string }> {
    return this.removeName.execute(asked, id);
  }
}
