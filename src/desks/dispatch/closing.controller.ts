import { Controller, Get, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { CancelDelivery } from '../../dispatch/cancel-delivery.js';
import { CloseDelivery } from '../../dispatch/close-delivery.js';
import { findDelivery } from '../../dispatch/deliveries.js';
import { CancelDeliveryForm } from '../../dispatch/delivery.form.js';
import { VehicleLeaves } from '../../dispatch/vehicle-leaves.js';
import { VoidDeliveryNote } from '../../dispatch/void-delivery-note.js';
import type { Asked } from '../../journal/entry-draft.js';
import { paperLanguageFor } from '../../plant/paper-languages.js';
import { May } from '../../platform/actor.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { cancelPage, closePage, leavePage, voidPage } from './closing.page.js';
import { DispatchDesk } from './dispatch-desk.js';
import { ClosePageForm, LeavePageForm, VoidPageForm } from './dispatch.form.js';
import { NothingPrinted } from './nothing-printed.js';

/** The end of a delivery: papers, gate, a void note, a cancellation. */
@ApiExcludeController()
@Controller('dispatch/:deliveryId')
export class DispatchClosingController {
  constructor(
    private readonly desk: DispatchDesk,
    private readonly closeDelivery: CloseDelivery,
    private readonly vehicleLeaves: VehicleLeaves,
    private readonly voidDeliveryNote: VoidDeliveryNote,
    private readonly cancelDelivery: CancelDelivery,
  ) {}

  @Get('close')
  @May('close-deliveries')
  close(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.closeAgain(viewer, id, null);
  }

  @Post('close')
  @May('close-deliveries')
  closeIt(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return sent.take({
      form: ClosePageForm,
      timeZone: viewer.timeZone,
      act: ({ step, ...form }) => {
        if (step === 'look') throw new NothingPrinted();
        return this.closeDelivery.execute(asked, id, form);
      },
      next: () => `/dispatch/${id}`,
      says: ({ noteNumber }) => ({ code: 'said-delivery-closed', facts: { note: noteNumber } }),
      again: (trouble) => this.closeAgain(viewer, id, trouble),
    });
  }

  @Get('leave')
  @May('close-deliveries')
  async leave(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return leavePage({ viewer, loading: await this.desk.loading(viewer, id), trouble: null });
  }

  @Post('leave')
  @May('close-deliveries')
  leaveIt(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return sent.take({
      form: LeavePageForm,
      times: ['leftAt'],
      timeZone: viewer.timeZone,
      act: (form) => this.vehicleLeaves.execute(asked, id, form),
      next: () => `/dispatch/${id}`,
      says: () => ({ code: 'said-vehicle-left', facts: {} }),
      again: async (trouble) => leavePage({ viewer, loading: await this.desk.loading(viewer, id), trouble }),
    });
  }

  @Get('void')
  @May('close-deliveries')
  void(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.voidAgain(viewer, id, null);
  }

  @Post('void')
  @May('close-deliveries')
  voidIt(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return sent.take({
      form: VoidPageForm,
      timeZone: viewer.timeZone,
      act: (form) => this.voidDeliveryNote.execute(asked, id, form),
      next: () => `/dispatch/${id}`,
      says: ({ voidNumber }) => ({ code: 'said-note-void', facts: { note: voidNumber } }),
      again: (trouble) => this.voidAgain(viewer, id, trouble),
    });
  }

  @Get('cancel')
  @May('keep-deliveries')
  async cancel(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return cancelPage({ viewer, delivery: await this.delivery(viewer, id), trouble: null });
  }

  @Post('cancel')
  @May('keep-deliveries')
  cancelIt(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return sent.take({
      form: CancelDeliveryForm,
      timeZone: viewer.timeZone,
      act: (form) => this.cancelDelivery.execute(asked, id, form),
      next: () => '/dispatch',
      says: () => ({ code: 'said-delivery-cancelled', facts: {} }),
      again: async (trouble) => cancelPage({ viewer, delivery: await this.delivery(viewer, id), trouble }),
    });
  }

  private async closeAgain(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const loading = await this.desk.loading(viewer, id);
    const paperLanguage = await paperLanguageFor(this.desk.reader, loading.view.customerId);
    return closePage({ viewer, loading, trouble, isLookedOver: trouble?.code === 'nothing-printed', paperLanguage });
  }

  private async voidAgain(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const delivery = await this.delivery(viewer, id);
    const paperLanguage = await paperLanguageFor(this.desk.reader, delivery.customerId);
    return voidPage({ viewer, delivery, trouble, paperLanguage });
  }

  private delivery(viewer: Viewer, id: string) {
    return findDelivery(this.desk.reader, viewer.actor.siteId, id);
  }
}
