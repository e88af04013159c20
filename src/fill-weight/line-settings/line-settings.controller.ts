import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { openRunOfLine } from '../../packing/packing-runs.js';
import { namesOf } from '../../people/people.js';
import { May, MayBeQueued } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { formatsOfSite } from '../../plant/named-things.js';
import { ofSite } from '../../plant/of-site.js';
import { lineOf } from '../../plant/plant-facts.js';
import { ChangeSetting } from './change-setting.js';
import { CorrectSetting } from './correct-setting.js';
import { ChangeSettingForm, CorrectSettingForm, SettingPageQuery } from './line-setting.form.js';
import { settingOf, settingsOfLine } from './line-settings.js';
import { lineSettingsPage } from './line-settings.page.js';
import { settingCorrectionPage } from './setting-correction.page.js';

type Taken = Promise<VNode | TakenForScript | null>;

/** What a line was set to, and when: recorded by hand, and corrected. */
@ApiExcludeController()
@Controller()
export class LineSettingsController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly changeSetting: ChangeSetting,
    private readonly correctSetting: CorrectSetting,
  ) {}

  @Get('lines/:id/settings')
  @May('read')
  list(
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Query() query: SettingPageQuery,
  ): Promise<VNode> {
    return this.page(viewer, id, { query, trouble: null });
  }

  @Post('lines/:id/settings')
  @May('run-line')
  @MayBeQueued()
  change(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Taken {
    return sent.take({
      form: ChangeSettingForm,
      times: ['changedAt'],
      timeZone: viewer.timeZone,
      act: (form) => this.changeSetting.execute(asked, id, form),
      next: () => `/lines/${id}/settings`,
      says: () => ({ code: 'said-setting-changed', facts: {} }),
      again: (trouble) => this.page(viewer, id, { query: {}, trouble }),
    });
  }

  @Get('line-settings/:id/correct')
  @May('correct')
  askCorrection(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.correctionPage(viewer, id, null);
  }

  @Post('line-settings/:id/correct')
  @May('correct')
  correct(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Taken {
    return sent.take({
      form: CorrectSettingForm,
      times: ['changedAt'],
      timeZone: viewer.timeZone,
      act: (form) => this.correctSetting.execute(asked, id, form),
      next: ({ lineId }) => `/lines/${lineId}/settings`,
      says: () => ({ code: 'said-setting-corrected', facts: {} }),
      again: (trouble) => this.correctionPage(viewer, id, trouble),
    });
  }

  private async page(
    viewer: Viewer,
    lineId: string,
    { query, trouble }: { readonly query: SettingPageQuery; readonly trouble: FormTrouble | null },
  ): Promise<VNode> {
    const { siteId } = viewer.actor;
    const line = ofSite(viewer.actor, 'packing-line', await lineOf(this.reader, lineId));
    const settings = await settingsOfLine(this.reader, line.id);
    const run = await openRunOfLine(this.reader, line.id);
    const people = settings.flatMap(({ setBy }) => (setBy === null ? [] : [setBy]));
    return lineSettingsPage({
      ...{ viewer, line, settings, trouble, names: await namesOf(this.reader, people) },
      formats: await formatsOfSite(this.reader, siteId),
      ...{ formatId: query.formatId ?? null, running: run?.formatName ?? null },
      advisedGrams: query.setpointGrams ?? null,
    });
  }

  private async correctionPage(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const setting = await settingOf(this.reader, viewer.actor.siteId, id);
    const line = await lineOf(this.reader, setting.lineId);
    return settingCorrectionPage({ viewer, line, setting, trouble });
  }
}
