import { CheckVehicle } from '../../dispatch/check-vehicle.js';
import { LoadPallet } from '../../dispatch/load-pallet.js';
import { PlanDelivery } from '../../dispatch/plan-delivery.js';
import type { Instant } from '../../platform/clock.js';
import type { FormatCode } from '../life/demo-plan.js';
import { packsPerPallet } from '../life/pack-formats.js';
import { idIn, type DemoHand } from '../set-up/demo-hand.js';
import type { LastStep } from './last-hour.js';
import { checkPoints, mayGo } from './play-dispatch.js';

/** So many pallets are ordered, and about half of them are on when the demo ends. */
const orderedPallets = 10;
const loadedAtMinutes = [15, 12, 9, 6, 3] as const;

/**
 * An invented vehicle that stands at the dock when the demo ends, half loaded: planned, checked, and loaded pallet by pallet.
 * A demo with too little that may go has none.
 */
export class VehicleAtTheDock {
  readonly steps: readonly LastStep[] = [
    { minutesBefore: 23, act: () => this.plan() },
    { minutesBefore: 19, act: () => this.check() },
    ...loadedAtMinutes.map((minutesBefore) => ({ minutesBefore, act: () => this.loadNext() })),
  ];

  private deliveryId: string | null = null;
  private waiting: string[] = [];

  constructor(
    private readonly hand: DemoHand,
    private readonly endsAt: Instant,
  ) {}

  /** Of the format of which the most may go. */
  private async plan(): Promise<void> {
    const { hand } = this;
    let chosen: { readonly format: FormatCode; readonly pallets: readonly string[] } | null = null;
    for (const [format, formatId] of hand.plant.formats) {
      const pallets = await mayGo(hand, formatId, orderedPallets);
      if (pallets.length > (chosen?.pallets.length ?? loadedAtMinutes.length)) chosen = { format, pallets };
    }
    const [customerId] = hand.plant.customers;
    if (chosen === null || customerId === undefined) return;
    this.waiting = chosen.pallets.slice(0, orderedPallets);
    const formatId = idIn(hand.plant.formats, chosen.format);
    const lines = [{ formatId, orderedCount: this.waiting.length * packsPerPallet[chosen.format] }];
    const order = { customerId, orderNumber: '4509001', plannedOn: this.endsAt.slice(0, 10), lines };
    this.deliveryId = (await hand.give(PlanDelivery).execute(hand.asked('clerk'), order)).id;
  }

  private async check(): Promise<void> {
    if (this.deliveryId === null) return;
    const answers = checkPoints.map((point) => ({ point, isFine: true }));
    const form = { registration: 'AQ 727 D', haulierCode: 'H-02', answers };
    await this.hand.give(CheckVehicle).execute(this.hand.asked('loader'), this.deliveryId, form);
  }

  private async loadNext(): Promise<void> {
    const pallet = this.waiting.shift();
    if (this.deliveryId === null || pallet === undefined) return;
    await this.hand.give(LoadPallet).execute(this.hand.asked('loader'), this.deliveryId, { pallet });
  }
}
