import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import type { Place, ProvenPassword } from './own-password.js';
import type { ChangePasswordForm, SetPinForm } from './session.form.js';
import { Sessions, type Begun } from './sessions.js';
import { SetOwnPassword } from './set-own-password.js';
import { SetPin } from './set-pin.js';

/** A change of one's own password or PIN ends all sessions of the person; the one who made it goes on in a new one. */
@Injectable()
export class OwnSecrets {
  constructor(
    private readonly setOwnPassword: SetOwnPassword,
    private readonly setOwnPin: SetPin,
    private readonly sessions: Sessions,
  ) {}

  async changePassword(asked: Asked, form: ChangePasswordForm, place: Place): Promise<Begun> {
    return this.goOn(asked, await this.setOwnPassword.execute(asked, form, place));
  }

  async setPin(asked: Asked, form: SetPinForm, place: Place): Promise<Begun> {
    return this.goOn(asked, await this.setOwnPin.execute(asked, form, place));
  }

  private goOn({ actor }: Asked, proven: ProvenPassword): Promise<Begun> {
    return this.sessions.begin({ ...proven, proof: 'password', siteId: actor.siteId, deviceId: actor.deviceId }, null);
  }
}
