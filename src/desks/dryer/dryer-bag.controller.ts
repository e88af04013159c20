import { Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { StartBag } from '../../drying/start-bag.js';
import type { Asked } from '../../journal/entry-draft.js';
import { TakeSample } from '../../laboratory/take-sample.js';
import { May } from '../../platform/actor.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { CloseHere } from './close-here.js';
import { BagOnForm, CloseHereForm, SampleHereForm } from './dryer.form.js';
import { DryerPages } from './dryer-pages.js';

type Taken = Promise<VNode | TakenForScript | null>;

/** A bag is hung up, closed with its weight, sampled. */
@ApiExcludeController()
@Controller('dryer')
export class DryerBagController {
  constructor(
    private readonly startBag: StartBag,
    private readonly closeHere: CloseHere,
    private readonly takeSample: TakeSample,
    private readonly pages: DryerPages,
  ) {}

  @Post(':dryerId/bags')
  @May('fill-bags')
  bagOn(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('dryerId', ParseUUIDPipe) dryerId: string,
  ): Taken {
    return sent.take({
      form: BagOnForm,
      timeZone: viewer.timeZone,
      act: (form) => this.startBag.execute(asked, form),
      next: () => `/dryer/${dryerId}`,
      again: (why) => this.pages.one(viewer, dryerId, { of: 'bag', why }),
    });
  }

  @Post(':dryerId/closes')
  @May('fill-bags')
  close(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('dryerId', ParseUUIDPipe) dryerId: string,
  ): Taken {
    return sent.take({
      form: CloseHereForm,
      timeZone: viewer.timeZone,
      act: (form) => this.closeHere.execute(asked, form),
      next: ({ paperId }) => `/dryer/${dryerId}?label=${paperId}`,
      says: ({ number, netGrams }) => ({
        code: 'dryer-closed',
        facts: { bag: number, kilograms: kilogramsText(netGrams) },
      }),
      again: (why) => this.pages.one(viewer, dryerId, { of: 'close', why }, { bag: why.entered['bagId'] }),
    });
  }

  @Post(':dryerId/samples')
  @May('take-samples')
  sample(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('dryerId', ParseUUIDPipe) dryerId: string,
  ): Taken {
    return sent.take({
      form: SampleHereForm,
      timeZone: viewer.timeZone,
      act: (form) => this.takeSample.execute(asked, { standsFor: 'bag', bag: form.bag }),
      next: () => `/dryer/${dryerId}`,
      says: ({ number }) => ({ code: 'dryer-sampled', facts: { sample: number } }),
      again: (why) => this.pages.one(viewer, dryerId, { of: 'sample', why }),
    });
  }
}
