import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { personOf } from '../../people/people.js';
import { RoleForm } from '../../people/person.form.js';
import { RemoveName } from '../../people/remove-name.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { AdmitStepForm, NothingForm } from './people.form.js';
import { PersonActs } from './person-acts.js';
import { badgePage, passwordPage, personSetUpPage } from './person-set-up.page.js';
import { SetUpPages } from './set-up-pages.js';

type Taken = Promise<VNode | TakenForScript | null>;

/** People: admitted with a role and a first password, given badges, and let go. Secrets are shown once. */
@ApiExcludeController()
@Controller('set-up/people')
export class PeopleStepsController {
  constructor(
    private readonly acts: PersonActs,
    private readonly removeName: RemoveName,
    private readonly pages: SetUpPages,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Post()
  @May('keep-people')
  admit(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Promise<VNode> {
    return sent.show({
      form: AdmitStepForm,
      timeZone: viewer.timeZone,
      act: ({ personCode, ...form }) => this.acts.admitPerson.execute(asked, { ...form, code: personCode ?? null }),
      page: async ({ id, password }) => passwordPage(await this.secret(viewer, id, password)),
      again: this.pages.again(viewer, 'people', 'people'),
    });
  }

  @Get(':id')
  @May('keep-people')
  one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.person(viewer, id, null);
  }

  @Post(':id/roles')
  @May('keep-people')
  give(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Taken {
    return sent.take({
      form: RoleForm,
      timeZone: viewer.timeZone,
      act: (form) => this.acts.giveRole.execute(asked, id, form),
      next: () => `/set-up/people/${id}`,
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: (why) => this.person(viewer, id, { of: 'roles', why }),
    });
  }

  @Post(':id/role-ends')
  @May('keep-people')
  end(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Taken {
    return sent.take({
      form: RoleForm,
      timeZone: viewer.timeZone,
      act: (form) => this.acts.endRole.execute(asked, id, form),
      next: () => `/set-up/people/${id}`,
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: (why) => this.person(viewer, id, { of: 'role-ends', why }),
    });
  }

  @Post(':id/passwords')
  @May('keep-people')
  password(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode> {
    return sent.show({
      form: NothingForm,
      timeZone: viewer.timeZone,
      act: () => this.acts.givePassword.execute(asked, id),
      page: async ({ password }) => passwordPage(await this.secret(viewer, id, password)),
      again: (why) => this.person(viewer, id, { of: 'passwords', why }),
    });
  }

  @Post(':id/badges')
  @May('keep-people')
  badge(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode> {
    return sent.show({
      form: NothingForm,
      timeZone: viewer.timeZone,
      act: () => this.acts.giveBadge.execute(asked, id),
      page: async ({ badge }) => badgePage(await this.secret(viewer, id, badge)),
      again: (why) => this.person(viewer, id, { of: 'badges', why }),
    });
  }

  @Post(':id/name-removals')
  @May('keep-people')
  remove(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Taken {
    return sent.take({
      form: NothingForm,
      timeZone: viewer.timeZone,
      act: () => this.removeName.execute(asked, id),
      next: () => '/set-up/people',
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: (why) => this.person(viewer, id, { of: 'name-removals', why }),
    });
  }

  private async person(
    viewer: Viewer,
    id: string,
    trouble: { readonly of: string; readonly why: FormTrouble } | null,
  ): Promise<VNode> {
    return personSetUpPage({ viewer, person: await personOf(this.reader, viewer.actor.siteId, id), trouble });
  }

  private async secret(viewer: Viewer, id: string, secret: string | null) {
    const person = await personOf(this.reader, viewer.actor.siteId, id);
    return { viewer, person, secret, asAt: this.clock.now() };
  }
}
