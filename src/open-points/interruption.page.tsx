import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Figures } from '../platform/web/kit/figures.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { mostAnHour, type InterruptedHour, type InterruptingCause } from './interruptions.js';

interface InterruptionProps {
  readonly viewer: Viewer;
  readonly days: number;
  readonly hours: readonly InterruptedHour[];
  readonly causes: readonly InterruptingCause[];
  readonly names: ReadonlyMap<string, string>;
}

/** How often the house interrupts whom, hour by hour, against what people can take; and which causes do it most. */
export function interruptionPage({ viewer, days, hours, causes, names }: InterruptionProps): VNode {
  const over = hours.filter(({ shownCount }) => shownCount > mostAnHour).length;
  return (
    <Shell title={say('interruptions-title')} viewer={viewer}>
      <p class="quiet">{say('interruptions-says', { most: mostAnHour })}</p>
      <Figures
        of={[
          { label: say('interruptions-days'), value: days },
          { label: say('interruptions-all'), value: hours.reduce((sum, { shownCount }) => sum + shownCount, 0) },
          { label: say('interruptions-over'), value: over },
        ]}
      />
      <Table
        caption={say('interruptions-causes')}
        columns={[
          { head: say('interruptions-cause') },
          { head: say('interruptions-shown'), align: 'number' },
          { head: say('interruptions-repeats'), align: 'number' },
        ]}
        rows={causes.map(({ cause, shownCount, repeatCount }) => {
          return { key: cause, cells: [say(`cause-${cause}`), shownCount, repeatCount] };
        })}
        empty={say('interruptions-none')}
      />
      <Table
        caption={say('interruptions-hours')}
        columns={[
          { head: say('interruptions-hour') },
          { head: say('interruptions-person') },
          { head: say('interruptions-shown'), align: 'number' },
          { head: say('interruptions-repeats'), align: 'number' },
          { head: say('interruptions-target') },
        ]}
        rows={hours.map(({ personId, hourStartsAt, shownCount, repeatCount }) => ({
          key: `${personId} ${hourStartsAt}`,
          isLoud: shownCount > mostAnHour,
          cells: [
            localText(hourStartsAt, viewer.timeZone),
            names.get(personId) ?? '–',
            shownCount,
            repeatCount,
            shownCount > mostAnHour ? say('interruptions-too-many') : say('interruptions-within'),
          ],
        }))}
        empty={say('interruptions-none')}
      />
    </Shell>
  );
}
