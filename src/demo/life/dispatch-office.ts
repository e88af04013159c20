import type { Random } from '../plant-physics/random.js';
import type { FormatCode, GradeCode } from './demo-plan.js';
import { minuteOfLocal, type Minute } from './minutes.js';
import type { LiveBag } from './live-bag.js';
import type { World } from './world.js';

export const customerCount = 4;

interface Truck {
  readonly time: string;
  readonly format: FormatCode;
  readonly most: number;
}

const usualTrucks: readonly Truck[] = [
  { time: '07:10', format: 'WS-2KG', most: 24 },
  { time: '10:50', format: 'WS-1KG', most: 20 },
  { time: '13:10', format: 'XF-1KG', most: 20 },
];
const bagSaleTime = '16:10';
const mostBagsSold = 8;
const trucksOfLargeDay = 10;

/** Which vehicles come when. Pallets are picked in the house, by what it shows; bags are picked here, in the store. */
export class DispatchOffice {
  private readonly random: Random;
  private readonly bagSales: ReadonlySet<Minute>;
  private serial = 0;

  constructor(private readonly world: World) {
    this.random = world.random('dispatch');
    const mornings = world.plan.shifts.filter(({ code }, place) => code === 'M' && place > 0);
    mornings.forEach(({ productionOn }, place) => {
      for (const truck of this.trucks()) this.expect(minuteOfLocal(productionOn, truck.time), truck, place);
    });
    this.bagSales = new Set(mornings.map(({ productionOn }) => minuteOfLocal(productionOn, bagSaleTime)));
  }

  step(minute: Minute): void {
    if (this.bagSales.has(minute)) this.sellBags(minute);
  }

  private trucks(): readonly Truck[] {
    if (this.world.plan.size === 'usual') return usualTrucks;
    return Array.from({ length: trucksOfLargeDay }, (_, place) => {
      const minutes = 400 + place * 70;
      const time = `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
      return { time, format: 'WS-2KG', most: 26 };
    });
  }

  private expect(minute: Minute, { format, most }: Truck, day: number): void {
    const { diary } = this.world;
    const delivery = this.nextDelivery();
    diary.note(minute, 'clerk', { kind: 'plan-delivery', delivery, customer: this.anyCustomer(), format, most });
    this.checkVehicle(minute + 12, delivery);
    for (let place = 1; place <= most; place += 1) {
      diary.note(minute + 15 + place, 'loader', { kind: 'load-next', delivery });
    }
    const isHoldDay = day % 5 === 0 && format === 'WS-1KG';
    const hold = `${delivery}-hold`;
    if (isHoldDay) diary.note(minute + 17 + most, 'quality', { kind: 'hold-loaded', delivery, hold });
    this.close(minute + 22 + most, delivery, day % 7 === 3);
    if (day === 0 && format === 'WS-2KG') this.comeBack(minute + 300, delivery);
  }

  /** A customer refuses one pallet; quality looks at it the same afternoon. */
  private comeBack(minute: Minute, delivery: string): void {
    this.world.diary.note(minute, 'clerk', { kind: 'take-back', delivery });
    this.world.diary.note(minute + 45, 'quality', { kind: 'decide-return', delivery });
  }

  /** Bags of the lowest grade go first; where there are none, some of the usual one. */
  private sellBags(minute: Minute): void {
    const poor = this.saleable('IND');
    const bags = poor.length > 0 ? poor.slice(0, mostBagsSold) : this.saleable('WS2').slice(-3);
    const grade = bags[0]?.grade;
    if (grade === undefined) return;
    const delivery = this.nextDelivery();
    const customer = this.anyCustomer();
    const { diary } = this.world;
    diary.note(minute, 'clerk', { kind: 'plan-bag-sale', delivery, customer, grade, bagCount: bags.length });
    this.checkVehicle(minute + 10, delivery);
    bags.forEach((bag, place) => {
      bag.whereabouts = 'gone';
      diary.note(minute + 14 + place * 3, 'loader', { kind: 'load-bag', delivery, bag: bag.key });
    });
    this.close(minute + 20 + bags.length * 3, delivery, false);
  }

  private saleable(grade: GradeCode): readonly LiveBag[] {
    return this.world.store.bags.filter((bag) => {
      const isFree = bag.whereabouts === 'store' && !bag.isHeld && !bag.isOpened && !bag.isDoubtful;
      return isFree && bag.grade === grade && bag.verdict === 'released';
    });
  }

  private checkVehicle(minute: Minute, delivery: string): void {
    const registration = `AQ ${this.random.whole(100, 999)} D`;
    const haulier = this.random.pick(['H-01', 'H-02', 'H-03']);
    this.world.diary.note(minute, 'loader', { kind: 'check-vehicle', delivery, registration, haulier });
  }

  /** Counted by walking round (now and then wrong the first time), closed, and out of the gate. */
  private close(minute: Minute, delivery: string, isMiscounted: boolean): void {
    const { diary } = this.world;
    const seal = `S${String(this.random.whole(100_000, 999_999))}`;
    if (isMiscounted) diary.note(minute - 2, 'clerk', { kind: 'count-blind', delivery, isMiscounted });
    diary.note(minute - 1, 'clerk', { kind: 'count-blind', delivery, isMiscounted: false });
    diary.note(minute, 'clerk', { kind: 'close-delivery', delivery, seal });
    diary.note(minute + 4, 'clerk', { kind: 'vehicle-leaves', delivery });
  }

  private nextDelivery(): string {
    this.serial += 1;
    return `delivery-${this.serial}`;
  }

  private anyCustomer(): number {
    return this.random.whole(0, customerCount - 1);
  }
}
