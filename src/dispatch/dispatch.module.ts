import { Module, type OnModuleInit } from '@nestjs/common';
import { PaperRenderers } from '../platform/printing/paper-renderers.js';
import { CancelDelivery } from './cancel-delivery.js';
import { CheckVehicle } from './check-vehicle.js';
import { CloseDelivery } from './close-delivery.js';
import type { DeliveryNoteFacts } from './delivery-note.facts.js';
import { deliveryNote, deliveryNoteEdition, deliveryNoteKind } from './delivery-note.paper.js';
import { DeliveryApi } from './delivery.api.js';
import { DeliveryController } from './delivery.controller.js';
import './dispatch.sentences.js';
import './dispatch.sentences.es.js';
import { LoadBag } from './load-bag.js';
import { LoadPallet } from './load-pallet.js';
import { LoadingApi } from './loading.api.js';
import { NoteApi } from './note.api.js';
import { PlanDelivery } from './plan-delivery.js';
import { UnloadUnit } from './unload-unit.js';
import { VoidDeliveryNote } from './void-delivery-note.js';

const commands = [
  CancelDelivery,
  CheckVehicle,
  CloseDelivery,
  LoadBag,
  LoadPallet,
  PlanDelivery,
  UnloadUnit,
  VoidDeliveryNote,
];

@Module({
  controllers: [DeliveryApi, LoadingApi, NoteApi, DeliveryController],
  providers: commands,
  exports: commands,
})
export class DispatchModule implements OnModuleInit {
  constructor(private readonly renderers: PaperRenderers) {}

  onModuleInit(): void {
    this.renderers.add(deliveryNoteKind, deliveryNoteEdition, (facts, issuedAt) =>
      deliveryNote(facts as DeliveryNoteFacts, issuedAt),
    );
  }
}
