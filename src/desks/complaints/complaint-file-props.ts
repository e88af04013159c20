import type { Viewer } from '../../platform/web/request.js';
import type { Finding } from '../finding.js';
import type { FileTrouble } from '../quality/file-trouble.js';
import type { ComplaintFile } from './complaint-file.js';

/** What the page of a complaint and its boxes are made from. */
export interface ComplaintFileProps {
  readonly viewer: Viewer;
  readonly file: ComplaintFile;
  /** What a code to be linked may mean, where that was asked. */
  readonly findings: readonly Finding[];
  readonly trouble: FileTrouble | null;
}
