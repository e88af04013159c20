import type { Migration } from '../src/platform/database/migration.js';
import { ground } from './0001-ground.js';
import { checks } from './0002-checks.js';
import { line } from './0003-line.js';
import { dispatch } from './0004-dispatch.js';
import { offLine } from './0005-off-line.js';
import { plant } from './0006-plant.js';
import { quality } from './0007-quality.js';
import { narrowing } from './0008-narrowing.js';
import { complaints } from './0009-complaints.js';
import { recalls } from './0010-recalls.js';
import { timedHolds } from './0011-timed-holds.js';
import { paperLanguages } from './0012-paper-languages.js';
import { runCourses } from './0014-run-courses.js';
import { flowModels } from './0016-flow-models.js';
import { packWeights } from './0017-pack-weights.js';
import { weightBlocks } from './0018-weight-blocks.js';
import { waysIn } from './0019-ways-in.js';
import { weighingWatched } from './0020-weighing-watched.js';
import { minuteSums } from './0022-minute-sums.js';
import { weightMonths } from './0023-weight-months.js';
import { weigherChecks } from './0024-weigher-checks.js';
import { lineSettings } from './0025-line-settings.js';
import { formatSales } from './0026-format-sales.js';
import { saleCurrencies } from './0027-sale-currencies.js';
import { repeatsOfResults } from './0028-repeats-of-results.js';

/** The one history of the schema, oldest first. A migration that has been released is never edited. */
export const migrations: readonly Migration[] = [
  ground,
  checks,
  line,
  dispatch,
  offLine,
  plant,
  quality,
  narrowing,
  complaints,
  recalls,
  timedHolds,
  paperLanguages,
  runCourses,
  flowModels,
  packWeights,
  weightBlocks,
  waysIn,
  weighingWatched,
  minuteSums,
  weightMonths,
  weigherChecks,
  lineSettings,
  formatSales,
  saleCurrencies,
  repeatsOfResults,
];
