import { Injectable } from '@nestjs/common';
import { AdmitPerson } from '../../people/admit-person.js';
import { EndRole } from '../../people/end-role.js';
import { GiveBadge } from '../../people/give-badge.js';
import { GiveOneTimePassword } from '../../people/give-one-time-password.js';
import { GiveRole } from '../../people/give-role.js';

/** What an administrator does with a person's proofs and roles. */
@Injectable()
export class PersonActs {
  constructor(
    readonly admitPerson: AdmitPerson,
    readonly giveRole: GiveRole,
    readonly endRole: EndRole,
    readonly givePassword: GiveOneTimePassword,
    readonly giveBadge: GiveBadge,
  ) {}
}
