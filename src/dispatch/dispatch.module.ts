import { Module, type OnModuleInit } from '@nestjs/common';
import { PaperRenderers } from '../platform/printing/paper-renderers.js';
import { CancelDelivery } from './cancel-delivery.js';
import { ChangeDelivery } from './change-delivery.js';
import { CheckVehicle } from './check-vehicle.js';
import { CloseDelivery } from './close-delivery.js';
import { CountBlind } from './count-blind.js';
import { DecideReturn } from './decide-return.js';
import type { DeliveryNoteFacts } from './delivery-note.facts.js';
import { deliveryNote, deliveryNoteEditions, deliveryNoteKind } from './delivery-note.paper.js';
import { DeliveryApi } from './delivery.api.js';
import { DeliveryController } from './delivery.controller.js';
import './dispatch.sentences.js';
import './dispatch.sentences.es.js';
import './going-and-coming.sentences.js';
import './going-and-coming.sentences.es.js';
import { LoadBag } from './load-bag.js';
import { LoadPallet } from './load-pallet.js';
import { LoadScanned } from './load-scanned.js';
import { LoadingApi } from './loading.api.js';
import { NoteApi } from './note.api.js';
import { PlanDelivery } from './plan-delivery.js';
import { ReturnApi } from './return.api.js';
import { TakeBack } from './take-back.js';
import { UnloadUnit } from './unload-unit.js';
import { VehicleLeaves } from './vehicle-leaves.js';
import { VoidDeliveryNote } from './void-delivery-note.js';

const commands = [
  CancelDelivery,
  ChangeDelivery,
  CheckVehicle,
  CloseDelivery,
  CountBlind,
  DecideReturn,
  LoadBag,
  LoadPallet,
  LoadScanned,
  PlanDelivery,
  TakeBack,
  UnloadUnit,
  VehicleLeaves,
  VoidDeliveryNote,
];

@Module({
  controllers: [DeliveryApi, LoadingApi, NoteApi, ReturnApi, DeliveryController],
  providers: commands,
  exports: commands,
})
export class DispatchModule implements OnModuleInit {
  constructor(private readonly renderers: PaperRenderers) {}

  onModuleInit(): void {
    for (const edition of deliveryNoteEditions) {
      this.renderers.add(deliveryNoteKind, edition, (facts, issuedAt) =>
        deliveryNote(facts as DeliveryNoteFacts, issuedAt, edition),
      );
    }
  }
}
