import { Module } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { AddMachine } from './add-machine.js';
import { AddPerson } from './add-person.js';
import { AdmitPerson } from './admit-person.js';
import { DeviceApi } from './device.api.js';
import { DeviceController } from './device.controller.js';
import { EndRole } from './end-role.js';
import { EnrolDevice } from './enrol-device.js';
import { GiveBadge } from './give-badge.js';
import { GiveOneTimePassword } from './give-one-time-password.js';
import { GiveRole } from './give-role.js';
import { KnowWhoAsks } from './know-who-asks.js';
import { OwnPassword } from './own-password.js';
import { OwnLanguageApi } from './own-language.api.js';
import { OwnPageController } from './own-page.controller.js';
import { OwnSecrets } from './own-secrets.js';
import { OwnSessions } from './own-sessions.js';
import './people.sentences.js';
import './people.sentences.es.js';
import { PersonStandingApi } from './person-standing.api.js';
import { PersonApi } from './person.api.js';
import { PersonController } from './person.controller.js';
import { ProveAgain } from './prove-again.js';
import './prove-other.sentences.js';
import './prove-other.sentences.es.js';
import { ProveOther } from './prove-other.js';
import './prove-again.sentences.js';
import './prove-again.sentences.es.js';
import { QueueGate } from './queue-gate.js';
import { QueueProofApi } from './queue-proof.api.js';
import { QueueProofs } from './queue-proofs.js';
import './queue.sentences.es.js';
import './queue.sentences.js';
import './lost-form.sentences.es.js';
import './lost-form.sentences.js';
import { RemoveName } from './remove-name.js';
import { RenamePerson } from './rename-person.js';
import { RenewDeviceToken } from './renew-device-token.js';
import { SessionApi } from './session.api.js';
import { Sessions } from './sessions.js';
import { SetOwnLanguage } from './set-own-language.js';
import { SetOwnPassword } from './set-own-password.js';
import { SetPin } from './set-pin.js';
import { SignInController } from './sign-in.controller.js';
import { SignInPages } from './sign-in-pages.js';
import { SignIn } from './sign-in.js';
import { SignedInGuard } from './signed-in.guard.js';
import { Throttle } from './throttle.js';
import { WithdrawDevice } from './withdraw-device.js';

const commands = [
  AddMachine,
  AddPerson,
  AdmitPerson,
  EndRole,
  EnrolDevice,
  GiveBadge,
  GiveOneTimePassword,
  GiveRole,
  RemoveName,
  RenamePerson,
  RenewDeviceToken,
  SetOwnLanguage,
  SetOwnPassword,
  SetPin,
  WithdrawDevice,
];

@Module({
  controllers: [
    SessionApi,
    OwnLanguageApi,
    PersonApi,
    PersonStandingApi,
    DeviceApi,
    QueueProofApi,
    SignInController,
    OwnPageController,
    PersonController,
    DeviceController,
  ],
  providers: [
    ...commands,
    KnowWhoAsks,
    OwnPassword,
    OwnSecrets,
    OwnSessions,
    ProveAgain,
    ProveOther,
    QueueGate,
    QueueProofs,
    Sessions,
    SignIn,
    SignInPages,
    Throttle,
    { provide: APP_GUARD, useClass: SignedInGuard },
  ],
  exports: [...commands, ProveAgain, ProveOther, Sessions],
})
export class PeopleModule {}
