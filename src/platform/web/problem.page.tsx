import type { VNode } from 'preact';
import { say } from '../sentences/sentences.js';
import type { Problem } from './problem.js';
import type { Viewer } from './request.js';
import { BarePage, Shell } from './shell.js';

/** What a person sees when something was refused or could not be done. */
export function problemPage({ problem, viewer }: { problem: Problem; viewer: Viewer | null }): VNode {
  const body = (
    <section class="card refusal" role="alert">
      <p>{problem.detail}</p>
      {problem.fields === undefined ? null : (
        <ul>
          {problem.fields.map((field) => (
            <li key={field.field}>
              <strong>{field.field}</strong>: {field.detail}
            </li>
          ))}
        </ul>
      )}
      <p>
        <a href="/">{say('to-the-search-box')}</a>
      </p>
    </section>
  );
  const title = say(`problem-title-${problem.status}`);
  return viewer === null ? (
    <BarePage title={title}>{body}</BarePage>
  ) : (
    <Shell title={title} viewer={viewer}>
      {body}
    </Shell>
  );
}
