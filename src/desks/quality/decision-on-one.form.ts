import { verdicts, type Verdict } from '../../disposition/standings.js';
import { ChoiceField, IdField, TextField } from '../../platform/web/fields.js';

/** A decision on the one thing that the page is about. */
export class DecisionOnOneForm {
  @ChoiceField(verdicts, { example: 'released' })
  verdict!: Verdict;

  @TextField({ optional: true, most: 1000, says: 'Needed but for a plain release' })
  reason?: string | null;

  @IdField({ optional: true, says: 'Who stands behind a concession too' })
  secondPersonId?: string | null;
}

/** A bag is given another grade, on its own page. */
export class GradeOfBagForm {
  @IdField({ says: 'The grade that it is given' })
  gradeId!: string;

  @TextField({ most: 1000, says: 'Why' })
  reason!: string;
}
