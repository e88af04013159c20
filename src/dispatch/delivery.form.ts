import {
  ChoiceField,
  DayField,
  FlagField,
  FormListField,
  IdField,
  InstantField,
  TextField,
  WholeField,
} from '../platform/web/fields.js';
import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';

export class OrderLineForm {
  @IdField({ optional: true, says: 'The pack format, for packs' })
  formatId?: string | null;

  @IdField({ optional: true, says: 'The grade, for whole bulk bags' })
  gradeId?: string | null;

  @WholeField({ least: 1, most: 1_000_000, example: 4800, says: 'Packs, or bags' })
  orderedCount!: number;
}

export class PlanDeliveryForm {
  @IdField()
  customerId!: string;

  @TextField({ most: 40, example: '4500123', says: 'The customer’s order number' })
  orderNumber!: string;

  @DayField({ says: 'The day on which it is to leave' })
  plannedOn!: string;

  @InstantField({ optional: true, says: 'When the vehicle is to leave' })
  leavesAt?: string | null;

  @FormListField(() => OrderLineForm, { most: 50 })
  lines!: OrderLineForm[];
}

export class ChangeDeliveryForm {
  @TextField({ most: 40, example: '4500123', says: 'The customer’s order number' })
  orderNumber!: string;

  @DayField({ says: 'The day on which it is to leave' })
  plannedOn!: string;

  @InstantField({ optional: true, says: 'When the vehicle is to leave' })
  leavesAt?: string | null;

  @FormListField(() => OrderLineForm, { most: 50, says: 'All lines as they are to be' })
  lines!: OrderLineForm[];

  @TextField({ most: 200, example: 'The customer takes two pallets more' })
  reason!: string;
}

export class CheckAnswerForm {
  @TextField({ most: 40, example: 'clean', says: 'Code of the point' })
  point!: string;

  @FlagField({ example: true })
  isFine!: boolean;
}

export class CheckVehicleForm {
  @TextField({ most: 20, example: 'AQ 123 D' })
  registration!: string;

  @TextField({ most: 30, example: 'H-01', says: 'Code of the haulier' })
  haulierCode!: string;

  @FormListField(() => CheckAnswerForm, { most: 50, says: 'Every point of the house’s check with its answer' })
  answers!: CheckAnswerForm[];

  @InstantField({ optional: true })
  checkedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}

export class VoidNoteForm {
  @ChoiceField(correctionReasons, {
    says: 'did-not-occur: the vehicle did not leave so, loading is open again; incorrect-data: it left, a new version is issued',
  })
  correction!: CorrectionReason;

  @TextField({ most: 200, example: 'Seal number misread' })
  reason!: string;

  @TextField({
    optional: true,
    most: 40,
    example: 'DN-2026-000012',
    says: 'Number of the note that is meant; refused where another stands by now. Absent: the one that stands',
  })
  note?: string | null;

  @TextField({ optional: true, most: 40, example: 'S123465', says: 'The right seal, for a new version' })
  seal?: string | null;

  @TextField({ optional: true, most: 500, says: 'Remarks of the new version' })
  remarks?: string | null;
}

export class CancelDeliveryForm {
  @TextField({ most: 200, example: 'Order withdrawn by the customer' })
  reason!: string;
}

export class VehicleLeavesForm {
  @InstantField({ optional: true })
  leftAt?: string | null;

  @FlagField({
    optional: true,
    says: 'It has left already: recorded whatever is on it, and quality is told of what should not have gone',
  })
  isGone?: boolean | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}
