import type { Viewer } from '../../platform/web/request.js';
import type { FileTrouble } from '../quality/file-trouble.js';
import type { RecallFile } from './recall-file.js';

/** What the page of a recall and its boxes are made from. */
export interface RecallFileProps {
  readonly viewer: Viewer;
  readonly file: RecallFile;
  readonly trouble: FileTrouble | null;
}
