import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import type { ExpectedQuality } from './thread.js';

/** So many bags without a result are named. */
const namedAtOnce = 6;

interface ThreadQualityProps {
  readonly expected: readonly ExpectedQuality[];
}

/** What the sugar should be like by its likely bags: calculated, and said so in every line; or why nothing is said. */
export function ThreadQuality({ expected }: ThreadQualityProps): VNode | null {
  if (expected.length === 0) return null;
  return (
    <>
      <Table
        caption={say('quality-caption')}
        columns={[
          { head: say('quality-property') },
          { head: say('quality-value'), align: 'number' },
          { head: say('quality-range'), align: 'number' },
          { head: say('quality-method') },
          { head: say('quality-basis') },
        ]}
        rows={expected.map((quality) => ({ key: quality.property, cells: cellsOf(quality) }))}
      />
      <p class="quiet">{say('quality-says')}</p>
    </>
  );
}

function cellsOf(quality: ExpectedQuality): readonly string[] {
  const name = say(`property-${quality.property}`);
  if (quality.kind === 'refused') return [name, '–', '–', '–', refusedText(quality)];
  const { value, standard, range, decimals, method, repeatCount } = quality;
  const text = (figure: number): string => figure.toFixed(decimals);
  return [
    name,
    standard === null ? text(value) : say('quality-with-doubt', { value: text(value), standard: text(standard) }),
    range === null
      ? say('quality-range-not-known')
      : say('quality-between', { lowest: text(range.lowest), highest: text(range.highest) }),
    method,
    say(standard === null ? 'quality-doubt-not-known' : 'quality-doubt-by-repeats', { count: repeatCount }),
  ];
}

function refusedText(refused: Extract<ExpectedQuality, { kind: 'refused' }>): string {
  switch (refused.reason) {
    case 'does-not-blend':
      return say(`quality-no-blend-${refused.why}`);
    case 'nothing-inside':
      return say('quality-nothing-inside');
    case 'methods-differ':
      return say('quality-methods-differ', { methods: refused.methods.join(', ') });
    case 'results-missing':
      return say('quality-results-missing', {
        percent: (refused.share * 100).toFixed(1),
        bags: refused.sourceIds.slice(0, namedAtOnce).join(', '),
        more: Math.max(0, refused.sourceIds.length - namedAtOnce),
      });
  }
}
