import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';
import { ChoiceField, IdField, InstantField, TextField } from '../platform/web/fields.js';

/** Which account: of a hopper, over a stated time, a run, the shift that holds an instant, or the last shift that ended. */
export class AccountSpanForm {
  @IdField({ says: 'The hopper; all lines that it feeds belong to the account' })
  hopper!: string;

  @InstantField({ optional: true, says: 'First instant; goes with untilAt' })
  fromAt?: string | null;

  @InstantField({ optional: true, example: '2026-03-12T13:00:00.000Z', says: 'First instant that is no longer in it' })
  untilAt?: string | null;

  @TextField({ optional: true, most: 40, example: 'PR-2026-000118', says: 'A closed run: from its start to its close' })
  run?: string | null;

  @InstantField({ optional: true, says: 'An instant of the production shift that is meant' })
  shiftAt?: string | null;
}

export class SignAccountForm extends AccountSpanForm {
  @TextField({
    optional: true,
    least: 3,
    most: 1000,
    example: 'Spilled at the line 2 hopper, swept up and thrown away unweighed',
    says: 'What the lead knows of the difference; needed where the account does not close',
  })
  statedLoss?: string | null;

  @TextField({
    optional: true,
    least: 64,
    most: 64,
    pattern: /^[0-9a-f]{64}$/,
    form: 'hash',
    says: 'The contentHash of the draft that was looked at; where the records have changed since, signing is refused',
  })
  seenHash?: string | null;
}

export class CorrectAccountForm {
  @ChoiceField(correctionReasons, { says: 'Why the signed account is void; its number is kept' })
  why!: CorrectionReason;

  @TextField({ least: 3, most: 400, example: 'Signed for the wrong shift', says: 'What was wrong' })
  reason!: string;
}
