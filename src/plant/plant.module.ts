import { Module } from '@nestjs/common';
import { AddBagType } from './add-bag-type.js';
import { AddCoder } from './add-coder.js';
import { AddCustomer } from './add-customer.js';
import { AddDryer } from './add-dryer.js';
import { AddGrade } from './add-grade.js';
import { AddHopper } from './add-hopper.js';
import { AddPackFormat } from './add-pack-format.js';
import { AddPackingLine } from './add-packing-line.js';
import { AddScale } from './add-scale.js';
import { AddSite } from './add-site.js';
import { AddStorePlace } from './add-store-place.js';
import { BagTypeApi } from './bag-type.api.js';
import { ChangeBagType } from './change-bag-type.js';
import { ChangeSite } from './change-site.js';
import { CheckScale } from './check-scale.js';
import { CodersApi } from './coder.api.js';
import { CorrectCoderClock } from './correct-coder-clock.js';
import { CorrectPlantRecord } from './correct-plant-record.js';
import { CustomerApi } from './customer.api.js';
import { CustomerController } from './customer.controller.js';
import { GradeApi } from './grade.api.js';
import { LetFormatTakeGrade } from './let-format-take-grade.js';
import { LinkHopperToLine } from './link-hopper-to-line.js';
import { MachinesApi } from './machine.api.js';
import { PaperLanguageApi } from './paper-language.api.js';
import { PlantApi } from './plant.api.js';
import { PlantController } from './plant.controller.js';
import './plant.sentences.js';
import './plant.sentences.es.js';
import './customer.sentences.js';
import './customer.sentences.es.js';
import './usual.sentences.js';
import './usual.sentences.es.js';
import { RemoveCustomerContact } from './remove-customer-contact.js';
import { RulesApi } from './rules.api.js';
import { ScaleApi } from './scale.api.js';
import { SetCoderClock } from './set-coder-clock.js';
import { SetCustomerContact } from './set-customer-contact.js';
import { SetPaperLanguage } from './set-paper-language.js';
import { SetRuleSet } from './set-rule-set.js';
import { SetShiftPattern } from './set-shift-pattern.js';
import { SetUpGrade } from './set-up-grade.js';
import { SetUpLine } from './set-up-line.js';
import { SetUsualNet } from './set-usual-net.js';
import { SetSpecification } from './set-specification.js';
import { VerifyScale } from './verify-scale.js';

const commands = [
  AddSite,
  AddDryer,
  AddHopper,
  AddPackingLine,
  LinkHopperToLine,
  AddCoder,
  SetCoderClock,
  CorrectCoderClock,
  AddScale,
  CheckScale,
  VerifyScale,
  AddGrade,
  SetSpecification,
  AddPackFormat,
  LetFormatTakeGrade,
  AddCustomer,
  SetCustomerContact,
  RemoveCustomerContact,
  AddStorePlace,
  SetShiftPattern,
  SetRuleSet,
  CorrectPlantRecord,
  AddBagType,
  ChangeBagType,
  SetUsualNet,
  ChangeSite,
  SetPaperLanguage,
  SetUpLine,
  SetUpGrade,
];

@Module({
  controllers: [
    PlantController,
    CustomerController,
    PlantApi,
    MachinesApi,
    CodersApi,
    ScaleApi,
    GradeApi,
    CustomerApi,
    PaperLanguageApi,
    RulesApi,
    BagTypeApi,
  ],
  providers: commands,
  exports: commands,
})
export class PlantModule {}
