import type { EntityClass } from './platform/database/databases.js';
import { NumberSeries } from './platform/database/number-series.entity.js';
import { OutboxJob } from './platform/jobs/outbox-job.entity.js';
import { Paper } from './platform/printing/paper.entity.js';
import { PaperFile } from './platform/printing/paper-file.entity.js';
import { IdempotencyKey } from './journal/idempotency-key.entity.js';
import { EntryHappening } from './journal/entry-happening.entity.js';
import { JournalEntry } from './journal/journal-entry.entity.js';
import { JournalHead } from './journal/journal-head.entity.js';
import { JournalSubject } from './journal/journal-subject.entity.js';
import { Site } from './plant/site.entity.js';
import { PackingLine } from './plant/packing-line.entity.js';
import { Coder } from './plant/coder.entity.js';
import { CoderClock } from './plant/coder-clock.entity.js';
import { CustomerContact } from './plant/customer-contact.entity.js';
import { Customer } from './plant/customer.entity.js';
import { Dryer } from './plant/dryer.entity.js';
import { Grade } from './plant/grade.entity.js';
import { GradeSpecification } from './plant/grade-specification.entity.js';
import { Hopper } from './plant/hopper.entity.js';
import { HopperLine } from './plant/hopper-line.entity.js';
import { PackFormat } from './plant/pack-format.entity.js';
import { PackFormatGrade } from './plant/pack-format-grade.entity.js';
import { RuleSet } from './plant/rule-set.entity.js';
import { Scale } from './plant/scale.entity.js';
import { ScaleCheck } from './plant/scale-check.entity.js';
import { ScaleVerification } from './plant/scale-verification.entity.js';
import { ShiftPatternVersion } from './plant/shift-pattern.entity.js';
import { StorePlace } from './plant/store-place.entity.js';
import { BagType } from './plant/bag-type.entity.js';
import { GradeUsualNet } from './plant/grade-usual-net.entity.js';
import { SiteRevision } from './plant/site-revision.entity.js';
import { PaperLanguage } from './plant/paper-language.entity.js';
import { AttemptCount } from './people/attempt-count.entity.js';
import { Person } from './people/person.entity.js';
import { Credential } from './people/credential.entity.js';
import { DeviceToken } from './people/device-token.entity.js';
import { Device } from './people/device.entity.js';
import { PersonName } from './people/person-name.entity.js';
import { RoleHolding } from './people/role-holding.entity.js';
import { Session } from './people/session.entity.js';
import { QueueProof } from './people/queue-proof.entity.js';
import { OpenPoint } from './open-points/open-point.entity.js';
import { OpenPointEnd } from './open-points/open-point-end.entity.js';
import { OpenPointState } from './open-points/open-point-state.entity.js';
import { BannerSeen } from './open-points/banner-seen.entity.js';
import { InterruptionCount } from './open-points/interruption-count.entity.js';
import { PointShelf } from './open-points/point-shelf.entity.js';
import { KeptEntry } from './open-points/kept-entry.entity.js';
import { BagMove } from './drying/bag-move.entity.js';
import { BagState } from './drying/bag-state.entity.js';
import { DryerRun } from './drying/dryer-run.entity.js';
import { GoodsReceipt } from './drying/goods-receipt.entity.js';
import { BulkBag } from './drying/bulk-bag.entity.js';
import { BagWeighing } from './drying/bag-weighing.entity.js';
import { DryerRunEnd } from './drying/dryer-run-end.entity.js';
import { BagTypeUse } from './drying/bag-type-use.entity.js';
import { Sample } from './laboratory/sample.entity.js';
import { Result } from './laboratory/result.entity.js';
import { ChangeReview } from './disposition/change-review.entity.js';
import { Decision } from './disposition/decision.entity.js';
import { DecisionSecondPerson } from './disposition/decision-second-person.entity.js';
import { GradeAssignment } from './disposition/grade-assignment.entity.js';
import { Hold } from './disposition/hold.entity.js';
import { HoldClass } from './disposition/hold-class.entity.js';
import { HoldLift } from './disposition/hold-lift.entity.js';
import { HoldNarrowing } from './disposition/hold-narrowing.entity.js';
import { NarrowedPart } from './disposition/narrowed-part.entity.js';
import { NarrowingGround } from './disposition/narrowing-ground.entity.js';
import { Lot } from './packing/lot.entity.js';
import { PackingRun } from './packing/packing-run.entity.js';
import { CoderChange } from './packing/coder-change.entity.js';
import { FilmLot } from './packing/film-lot.entity.js';
import { FilmUse } from './packing/film-use.entity.js';
import { LineStop } from './packing/line-stop.entity.js';
import { LineRestart } from './packing/line-restart.entity.js';
import { LooseCount } from './packing/loose-count.entity.js';
import { PackCount } from './packing/pack-count.entity.js';
import { PackingRunClose } from './packing/packing-run-close.entity.js';
import { RunCourse } from './packing/run-course.entity.js';
import { PackingRunState } from './packing/packing-run-state.entity.js';
import { Removal } from './packing/removal.entity.js';
import { CheckPlan } from './line-checks/check-plan.entity.js';
import { CheckPlanState } from './line-checks/check-plan-state.entity.js';
import { LineCheck } from './line-checks/line-check.entity.js';
import { MeanNet } from './fill-weight/mean-net.entity.js';
import { PackWeigher } from './fill-weight/pack-weigher.entity.js';
import { HandSamplePlan } from './fill-weight/hand-plan/hand-sample-plan.entity.js';
import { FormatSale } from './fill-weight/format-sales/format-sale.entity.js';
import { LineSetting } from './fill-weight/line-settings/line-setting.entity.js';
import { SilenceSetting } from './fill-weight/silence/silence-setting.entity.js';
import { WeigherSilence } from './fill-weight/silence/weigher-silence.entity.js';
import { WeigherCheck } from './fill-weight/checks/weigher-check.entity.js';
import { WeigherWay } from './fill-weight/weigher-way.entity.js';
import { FileLayout } from './fill-weight/files/file-layout.entity.js';
import { WeightFile } from './fill-weight/files/weight-file.entity.js';
import { ShortPack } from './fill-weight/kept/short-pack.entity.js';
import { TareCorrection } from './fill-weight/kept/tare-correction.entity.js';
import { WeightBlock } from './fill-weight/kept/weight-block.entity.js';
import { WeightHour } from './fill-weight/kept/weight-hour.entity.js';
import { WeightMonth } from './fill-weight/kept/weight-month.entity.js';
import { WeightRun } from './fill-weight/kept/weight-run.entity.js';
import { WeightBatch } from './fill-weight/weight-batch.entity.js';
import { WeightRange } from './fill-weight/weight-range.entity.js';
import { WeightSeries } from './fill-weight/weight-series.entity.js';
import { HopperModel } from './hopper/hopper-model.entity.js';
import { HopperPeriod } from './hopper/hopper-period.entity.js';
import { HopperState } from './hopper/hopper-state.entity.js';
import { LevelSeen } from './hopper/level-seen.entity.js';
import { ProvenEmpty } from './hopper/proven-empty.entity.js';
import { ReworkBin } from './hopper/rework-bin.entity.js';
import { ReworkParent } from './hopper/rework-parent.entity.js';
import { Tip } from './hopper/tip.entity.js';
import { TipCandidate } from './hopper/tip-candidate.entity.js';
import { TipOff } from './hopper/tip-off.entity.js';
import { TracerSample } from './hopper/tracer-sample.entity.js';
import { TracerTrial } from './hopper/tracer-trial.entity.js';
import { ChangeoverRung } from './hopper/changeover-rung.entity.js';
import { Changeover } from './hopper/changeover.entity.js';
import { RefusalMet } from './hopper/refusal-met.entity.js';
import { Pallet } from './pallets/pallet.entity.js';
import { PalletContent } from './pallets/pallet-content.entity.js';
import { PalletDescent } from './pallets/pallet-descent.entity.js';
import { PalletLabelCheck } from './pallets/pallet-label-check.entity.js';
import { PalletMove } from './pallets/pallet-move.entity.js';
import { PalletState } from './pallets/pallet-state.entity.js';
import { PalletTakenApart } from './pallets/pallet-taken-apart.entity.js';
import { SsccBlock } from './pallets/sscc-block.entity.js';
import { SsccSetAside } from './pallets/sscc-set-aside.entity.js';
import { Delivery } from './dispatch/delivery.entity.js';
import { BlindCount } from './dispatch/blind-count.entity.js';
import { DeliveryCancel } from './dispatch/delivery-cancel.entity.js';
import { DeliveryClose } from './dispatch/delivery-close.entity.js';
import { DeliveryDeparture } from './dispatch/delivery-departure.entity.js';
import { DeliveryLine } from './dispatch/delivery-line.entity.js';
import { DeliveryPlan } from './dispatch/delivery-plan.entity.js';
import { DeliveryReturn } from './dispatch/delivery-return.entity.js';
import { DeliveryState } from './dispatch/delivery-state.entity.js';
import { Loading } from './dispatch/loading.entity.js';
import { RefusedScan } from './dispatch/refused-scan.entity.js';
import { ReturnDecision } from './dispatch/return-decision.entity.js';
import { ReturnedUnit } from './dispatch/returned-unit.entity.js';
import { Unloading } from './dispatch/unloading.entity.js';
import { VehicleCheck } from './dispatch/vehicle-check.entity.js';
import { Account } from './reconciliation/account.entity.js';
import { Handover } from './reconciliation/handover.entity.js';
import { HandoverAnswer } from './reconciliation/handover-answer.entity.js';
import { Complaint } from './complaints/complaint.entity.js';
import { ComplaintClass } from './complaints/complaint-class.entity.js';
import { ComplaintLink } from './complaints/complaint-link.entity.js';
import { ComplaintStep } from './complaints/complaint-step.entity.js';
import { ComplaintState } from './complaints/complaint-state.entity.js';
import { ComplaintContact } from './complaints/complaint-contact.entity.js';
import { Recall } from './recalls/recall.entity.js';
import { RecallScope } from './recalls/recall-scope.entity.js';
import { RecallMark } from './recalls/recall-mark.entity.js';
import { RecallAnswer } from './recalls/recall-answer.entity.js';
import { RecallSigning } from './recalls/recall-signing.entity.js';

/** All tables of the house, each after the ones it refers to. */
export const entities: readonly EntityClass[] = [
  NumberSeries,
  OutboxJob,
  Paper,
  PaperFile,
  IdempotencyKey,
  JournalEntry,
  JournalHead,
  JournalSubject,
  EntryHappening,
  Site,
  PackingLine,
  Coder,
  CoderClock,
  CustomerContact,
  Customer,
  Dryer,
  Grade,
  GradeSpecification,
  Hopper,
  HopperLine,
  PackFormat,
  PackFormatGrade,
  RuleSet,
  Scale,
  ScaleCheck,
  ScaleVerification,
  ShiftPatternVersion,
  StorePlace,
  BagType,
  GradeUsualNet,
  SiteRevision,
  PaperLanguage,
  AttemptCount,
  Person,
  Credential,
  DeviceToken,
  Device,
  PersonName,
  RoleHolding,
  Session,
  QueueProof,
  OpenPoint,
  OpenPointEnd,
  OpenPointState,
  BannerSeen,
  InterruptionCount,
  PointShelf,
  KeptEntry,
  BagState,
  DryerRun,
  GoodsReceipt,
  BulkBag,
  BagWeighing,
  BagMove,
  DryerRunEnd,
  BagTypeUse,
  Sample,
  Result,
  ChangeReview,
  Decision,
  DecisionSecondPerson,
  GradeAssignment,
  Hold,
  HoldClass,
  HoldLift,
  HoldNarrowing,
  NarrowedPart,
  NarrowingGround,
  Lot,
  PackingRun,
  CoderChange,
  FilmLot,
  FilmUse,
  LineStop,
  LineRestart,
  LooseCount,
  PackCount,
  PackingRunClose,
  PackingRunState,
  RunCourse,
  Removal,
  CheckPlan,
  CheckPlanState,
  LineCheck,
  MeanNet,
  PackWeigher,
  HandSamplePlan,
  FormatSale,
  LineSetting,
  SilenceSetting,
  WeigherSilence,
  WeigherCheck,
  WeigherWay,
  FileLayout,
  WeightFile,
  WeightBatch,
  WeightBlock,
  WeightRun,
  WeightHour,
  WeightMonth,
  ShortPack,
  TareCorrection,
  WeightSeries,
  WeightRange,
  HopperState,
  HopperPeriod,
  LevelSeen,
  ProvenEmpty,
  ReworkBin,
  ReworkParent,
  Tip,
  TipCandidate,
  TipOff,
  Changeover,
  ChangeoverRung,
  RefusalMet,
  TracerTrial,
  TracerSample,
  HopperModel,
  Pallet,
  PalletContent,
  PalletDescent,
  PalletLabelCheck,
  PalletMove,
  PalletState,
  PalletTakenApart,
  SsccBlock,
  SsccSetAside,
  Delivery,
  DeliveryCancel,
  DeliveryClose,
  DeliveryLine,
  DeliveryState,
  Loading,
  Unloading,
  VehicleCheck,
  BlindCount,
  RefusedScan,
  DeliveryPlan,
  DeliveryDeparture,
  DeliveryReturn,
  ReturnedUnit,
  ReturnDecision,
  Account,
  Handover,
  HandoverAnswer,
  Complaint,
  ComplaintClass,
  ComplaintLink,
  ComplaintStep,
  ComplaintState,
  ComplaintContact,
  Recall,
  RecallScope,
  RecallMark,
  RecallAnswer,
  RecallSigning,
];
