import { Controller, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { SetUpPages } from './set-up-pages.js';
import { AddCustomer } from '../../plant/add-customer.js';
import { AddStorePlace } from '../../plant/add-store-place.js';
import { LinkHopperToLine } from '../../plant/link-hopper-to-line.js';
import { SetUpLine } from '../../plant/set-up-line.js';
import { CustomerStepForm, FeedStepForm, LineStepForm, PlaceStepForm } from './set-up.form.js';

type Taken = Promise<VNode | TakenForScript | null>;

/** Lines with what feeds them, usual weights, places and customers. */
@ApiExcludeController()
@Controller('set-up')
export class TradeStepsController {
  constructor(
    private readonly setUpLine: SetUpLine,
    private readonly linkHopper: LinkHopperToLine,
    private readonly addPlace: AddStorePlace,
    private readonly addCustomer: AddCustomer,
    private readonly pages: SetUpPages,
  ) {}

  @Post('lines')
  @May('set-up-plant')
  line(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: LineStepForm,
      timeZone: viewer.timeZone,
      act: (form) => this.setUpLine.execute(asked, form),
      next: () => '/set-up/lines',
      says: () => ({ code: 'set-up-added', facts: {} }),
      again: this.pages.again(viewer, 'lines', 'lines'),
    });
  }

  @Post('lines/feeds')
  @May('set-up-plant')
  feed(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: FeedStepForm,
      timeZone: viewer.timeZone,
      act: (form) => this.linkHopper.execute(asked, form),
      next: () => '/set-up/lines',
      says: () => ({ code: 'set-up-saved', facts: {} }),
      again: this.pages.again(viewer, 'lines', 'lines/feeds'),
    });
  }

  @Post('places')
  @May('set-up-plant')
  place(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: PlaceStepForm,
      timeZone: viewer.timeZone,
      act: (form) => this.addPlace.execute(asked, form),
      next: () => '/set-up/places',
      says: () => ({ code: 'set-up-added', facts: {} }),
      again: this.pages.again(viewer, 'places', 'places'),
    });
  }

  @Post('customers')
  @May('set-up-plant')
  customer(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Taken {
    return sent.take({
      form: CustomerStepForm,
      timeZone: viewer.timeZone,
      act: ({ customerGln, ...form }) => this.addCustomer.execute(asked, { ...form, gln: customerGln ?? null }),
      next: () => '/set-up/customers',
      says: () => ({ code: 'set-up-added', facts: {} }),
      again: this.pages.again(viewer, 'customers', 'customers'),
    });
  }
}
