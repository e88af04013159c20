import { Injectable } from '@nestjs/common';
import { RenewDeviceToken } from '../../people/renew-device-token.js';
import { InstallPackWeigher } from '../install-pack-weigher.js';
import { SetWeigherWay } from '../set-weigher-way.js';
import { WithdrawPackWeigher } from '../withdraw-pack-weigher.js';

/** What is done with a pack weigher on its pages. */
@Injectable()
export class WeigherActs {
  constructor(
    readonly install: InstallPackWeigher,
    readonly setWay: SetWeigherWay,
    readonly renewToken: RenewDeviceToken,
    readonly withdraw: WithdrawPackWeigher,
  ) {}
}
