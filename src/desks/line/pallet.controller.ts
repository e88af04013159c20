import { Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { BuildPallet } from '../../pallets/build-pallet.js';
import { CheckPalletLabel } from '../../pallets/check-pallet-label.js';
import { CheckPalletLabelForm, SwapPalletLabelsForm } from '../../pallets/pallet-label.form.js';
import { contentsOf, findPallet } from '../../pallets/pallet-list.js';
import { SwapPalletLabels } from '../../pallets/swap-pallet-labels.js';
import { siteOf } from '../../plant/plant-facts.js';
import { May, MayBeQueued } from '../../platform/actor.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { LineDesk } from './line-desk.js';
import { LinePalletForm } from './line.form.js';
import { labelPaperOf } from './label-paper.js';
import { palletBackPage, palletPartPage, swapPage } from './pallet.page.js';
import { PalletsQuery } from './pallet.query.js';

/** A pallet is full: its label, scanned back on it; and two labels that were swapped. */
@ApiExcludeController()
@Controller('line/:lineId')
export class LinePalletController {
  constructor(
    private readonly desk: LineDesk,
    private readonly buildPallet: BuildPallet,
    private readonly checkLabel: CheckPalletLabel,
    private readonly swapLabels: SwapPalletLabels,
    private readonly ripple: CorrectionRipple,
  ) {}

  @Get('pallets')
  @May('build-pallets')
  part(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.partAgain(viewer, lineId, null);
  }

  @Post('pallets')
  @May('build-pallets')
  @MayBeQueued()
  build(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LinePalletForm,
      timeZone: viewer.timeZone,
      act: (form) => this.buildPallet.execute(asked, form),
      next: ({ id }) => `/line/${lineId}/pallets/${id}`,
      says: ({ sscc, packCount }) => ({ code: 'said-pallet-built', facts: { pallet: sscc, packCount } }),
      again: (trouble) => this.partAgain(viewer, lineId, trouble),
    });
  }

  @Get('pallets/:palletId')
  @May('build-pallets')
  one(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('palletId', ParseUUIDPipe) palletId: string,
  ): Promise<VNode> {
    return this.back(viewer, { lineId, palletId }, null);
  }

  @Post('pallets/:palletId')
  @May('build-pallets')
  check(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('palletId', ParseUUIDPipe) palletId: string,
  ) {
    return sent.take({
      form: CheckPalletLabelForm,
      timeZone: viewer.timeZone,
      act: (form) => this.checkLabel.execute(asked, palletId, form),
      next: () => `/line/${lineId}`,
      says: ({ sscc }) => ({ code: 'said-label-back', facts: { pallet: sscc } }),
      again: (trouble) => this.back(viewer, { lineId, palletId }, trouble),
    });
  }

  @Get('swap')
  @May('build-pallets')
  async swap(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Query() query: PalletsQuery,
  ): Promise<VNode> {
    const at = await this.desk.line(viewer, lineId);
    return swapPage({ viewer, at, one: query.one ?? '', other: query.other ?? '' });
  }

  @Post('swap')
  @May('correct')
  swapped(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return takeByRipple(sent, {
      ...{
        viewer,
        asked,
        ripple: this.ripple,
        form: SwapPalletLabelsForm,
        back: `/line/${lineId}/swap`,
        use: 'tablet',
      },
      correct: (asking, form) => this.swapLabels.execute(asking, form),
      next: () => `/line/${lineId}`,
      says: ({ one, other, isLoaded }) => {
        return { code: isLoaded ? 'said-swapped-loaded' : 'said-swapped', facts: { one, other } };
      },
      again: async (trouble) => {
        return swapPage({ viewer, at: await this.desk.line(viewer, lineId), one: '', other: '', trouble });
      },
    });
  }

  private async partAgain(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const { paperLanguage } = await siteOf(this.desk.reader, viewer.actor.siteId);
    return palletPartPage({ viewer, at: await this.desk.line(viewer, lineId), trouble, paperLanguage });
  }

  private async back(
    viewer: Viewer,
    { lineId, palletId }: { readonly lineId: string; readonly palletId: string },
    trouble: FormTrouble | null,
  ): Promise<VNode> {
    const at = await this.desk.line(viewer, lineId);
    const pallet = await findPallet(this.desk.reader, viewer.actor.siteId, palletId);
    const contents = await contentsOf(this.desk.reader, [pallet.id]);
    return palletBackPage({
      viewer,
      at,
      pallet,
      contents,
      paperId: await labelPaperOf(this.desk.reader, pallet.id),
      trouble,
    });
  }
}
