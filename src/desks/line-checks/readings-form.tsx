import type { VNode } from 'preact';
import { judgeTyped, verdictOf, type TypedReading } from '../../core/test-packs/judge-typed.js';
import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import type { TestPiece } from '../../line-checks/check-words.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { NumberEntry } from '../../platform/web/kit/entries.js';
import { pieceText, thousandthsText } from './check-text.js';
import { DoneAtOnce } from './done-at-once.js';

interface ReadingsProps {
  readonly plan: CheckPlanRow;
  readonly trouble: FormTrouble | null;
}

/** What the readings come to that stand in a form: each, and all together (null: one is missing or not meant). */
export function readingsEntered({ plan, trouble }: ReadingsProps) {
  const entered = (name: string): string => {
    const text = trouble?.entered[name];
    return typeof text === 'string' ? text : '';
  };
  const readings = plan.testPieces.map((piece, place) =>
    judgeTyped(packOf(piece), entered(`reading${place}`), entered(`piece${place}`) === 'failed'),
  );
  return { readings, verdict: verdictOf(readings) };
}

/** The readings first, then what they come to by the plan's limits; what was done is asked only where one failed. */
export function Readings({ plan, trouble }: ReadingsProps): VNode {
  const { readings, verdict } = readingsEntered({ plan, trouble });
  const first = Math.max(
    readings.findIndex(({ found }) => found === 'missing' || found === 'not-meant'),
    0,
  );
  return (
    <>
      <div class="sample-packs" data-check-readings="">
        {plan.testPieces.map((piece, place) => (
          <Reading
            key={piece.code}
            piece={piece}
            place={place}
            reading={readings[place] ?? { found: 'missing' }}
            isFirst={place === first}
            trouble={trouble}
          />
        ))}
      </div>
      <p class="sentence verdict" data-check-verdict="" data-found={verdict ?? 'open'} role="status">
        {say(`browser-check-${verdict ?? 'open'}`)}
      </p>
      <input type="hidden" name="signedAs" value={verdict ?? ''} />
      <div data-if-failed="" hidden={verdict !== 'failed'}>
        <DoneAtOnce trouble={trouble} />
      </div>
    </>
  );
}

interface ReadingProps {
  readonly piece: TestPiece;
  readonly place: number;
  readonly reading: TypedReading;
  readonly isFirst: boolean;
  readonly trouble: FormTrouble | null;
}

function Reading({ piece, place, reading, isFirst, trouble }: ReadingProps): VNode {
  const name = `reading${place}`;
  return (
    <div>
      <NumberEntry
        name={name}
        label={piece.says}
        hint={pieceText(piece)}
        unit="g"
        takesScan
        goesOn
        autofocus={isFirst}
        trouble={trouble}
        testPack={packOf(piece)}
      />
      <p class="verdict" data-verdict-of={name} data-found={reading.found}>
        {readingText(reading, piece)}
      </p>
      <label class="tick">
        <input
          type="checkbox"
          name={`piece${place}`}
          value="failed"
          checked={trouble?.entered[`piece${place}`] === 'failed'}
          data-shows-nothing={name}
        />
        <span>{say('check-shows-nothing')}</span>
      </label>
    </div>
  );
}

/** Why a reading passed, failed or cannot be meant. */
function readingText(reading: TypedReading, piece: TestPiece): string {
  if (reading.found === 'missing') return '';
  if (reading.why !== 'reading') return say(`browser-reading-${reading.why}`);
  return offText(reading.offMilligrams, piece);
}

/** How far a reading is off, and what that comes to. */
export function offText(offMilligrams: number, piece: Pick<TestPiece, 'allowedMilligrams'>): string {
  const allowedMilligrams = piece.allowedMilligrams ?? 0;
  const word = Math.abs(offMilligrams) <= allowedMilligrams ? 'passed' : 'failed';
  const off = `${offMilligrams > 0 ? '+' : ''}${thousandthsText(offMilligrams)}`;
  return say(`browser-reading-${word}`, { off, allowed: thousandthsText(allowedMilligrams) });
}

function packOf({ knownMilligrams, allowedMilligrams }: TestPiece) {
  return { knownMilligrams: knownMilligrams ?? 0, allowedMilligrams: allowedMilligrams ?? 0 };
}
