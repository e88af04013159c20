import { ChoiceField, TextField, WholeField } from '../../platform/web/fields.js';
import { dayOrders } from './local-clock.js';
import { netFields, separators, type SavedLayout } from './saved-layout.js';

const orders = [...dayOrders, 'offset'] as const;
const column = { most: 60, example: 'Weight' };
const seriesPattern = /^[A-Za-z0-9][A-Za-z0-9.-]{0,29}$/;

export class FileLayoutForm {
  @ChoiceField(Object.keys(separators), { says: 'What parts two columns' })
  separator!: SavedLayout['separator'];

  @ChoiceField(['point', 'comma'], { says: 'What stands before the decimals' })
  decimal!: SavedLayout['decimal'];

  @WholeField({ most: 50, example: 1, says: 'Lines before the first weight; the last of them holds the headings' })
  headerLines!: number;

  @TextField({ ...column, optional: true, says: 'Absent: the file counts no packs, its lines do' })
  sequenceColumn?: string | null;

  @TextField({ ...column, example: 'Time', says: 'A heading, or a number counted from 1' })
  timeColumn!: string;

  @TextField({ ...column, optional: true, example: 'Date', says: 'Absent: date and time stand in one column' })
  dayColumn?: string | null;

  @ChoiceField(orders, { says: 'How a date is written: year, month and day, or ISO 8601 with its offset' })
  timeOrder!: SavedLayout['timeOrder'];

  @TextField({ most: 60, example: 'Europe/Berlin', says: 'The zone of the machine’s clock' })
  timeZone!: string;

  @TextField({ ...column, says: 'The column of the net' })
  netColumn!: string;

  @ChoiceField(Object.keys(netFields), { says: 'The unit of the net' })
  unit!: SavedLayout['unit'];

  @TextField({ ...column, optional: true, example: 'Head' })
  headColumn?: string | null;

  @TextField({ ...column, optional: true, example: 'Result' })
  rejectColumn?: string | null;

  @TextField({ optional: true, most: 30, example: 'NG', says: 'What stands there of a pack that was taken out' })
  rejectWord?: string | null;

  @TextField({ optional: true, most: 30, example: 'OK', says: 'What stands there of a pack that went on' })
  acceptWord?: string | null;

  @TextField({ ...column, optional: true, example: 'Run', says: 'Absent: the time tells the run' })
  runColumn?: string | null;

  @TextField({ optional: true, most: 30, pattern: seriesPattern, form: 'weight-series', example: '1' })
  series?: string | null;
}

/** What is saved of a form. */
export function savedLayoutOf(form: FileLayoutForm): SavedLayout {
  return {
    separator: form.separator,
    decimal: form.decimal,
    headerLines: form.headerLines,
    sequenceColumn: form.sequenceColumn ?? null,
    timeColumn: form.timeColumn,
    dayColumn: form.dayColumn ?? null,
    timeOrder: form.timeOrder,
    timeZone: form.timeZone,
    netColumn: form.netColumn,
    unit: form.unit,
    headColumn: form.headColumn ?? null,
    rejectColumn: form.rejectColumn ?? null,
    rejectWord: form.rejectWord ?? null,
    acceptWord: form.acceptWord ?? null,
    runColumn: form.runColumn ?? null,
    series: form.series ?? '1',
  };
}
