import type { VNode } from 'preact';
import type { ReadSample } from '../../fill-weight/hand-samples.js';
import { gramsText } from '../../fill-weight/weight-text.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';

interface SampleTableProps {
  readonly caption: string;
  readonly samples: readonly ReadSample[];
  readonly nominalGrams: number;
  readonly timeZone: string;
}

/** Hand samples, one a row, each with the way to it. */
export function SampleTable({ caption, samples, nominalGrams, timeZone }: SampleTableProps): VNode {
  return (
    <Table
      caption={caption}
      columns={[
        { head: say('hand-sample-when') },
        { head: say('hand-sample-packs'), align: 'number' },
        { head: say('hand-sample-mean'), align: 'number' },
        { head: say('hand-sample-off'), align: 'number' },
        { head: say('hand-sample-range'), align: 'number' },
        { head: say('hand-sample-deviation'), align: 'number' },
        { head: say('hand-sample-finding') },
      ]}
      rows={samples.map(({ id, weighedAt, reading }) => ({
        key: id,
        isLoud: reading.finding !== 'inOrder',
        cells: [
          <a href={`/hand-samples/${id}`}>{localText(weighedAt, timeZone)}</a>,
          countText(reading.packCount),
          gramsText(reading.meanMilligrams, 2),
          gramsText(reading.meanMilligrams - nominalGrams * 1000, 2),
          gramsText(reading.rangeMilligrams),
          gramsText(reading.standardDeviationMilligrams, 2),
          say(`hand-sample-is-${reading.finding}`),
        ],
      }))}
      empty={say('hand-samples-none')}
    />
  );
}
