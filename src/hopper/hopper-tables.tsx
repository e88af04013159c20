import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { HopperLevel } from './hopper-level.js';
import type { PeriodView } from './hopper-views.js';
import { mass } from './level-text.js';
import type { TipRow } from './tips.js';

/** What in the records cannot be true, and what would explain it. */
export function Findings({
  level,
  timeZone,
}: {
  readonly level: HopperLevel;
  readonly timeZone: string;
}): VNode | null {
  if (level.findings.length === 0) return null;
  const local = (at: string | null): string => (at === null ? say('level-since-the-start') : localText(at, timeZone));
  return (
    <section class="card">
      <h2>{say('hopper-records-impossible')}</h2>
      <ul>
        {level.findings.map(({ kind, eventIndex, at, byGrams }) => (
          <li key={`${kind}-${eventIndex}`}>
            {say('finding-at', { at: local(at), kilograms: mass(byGrams), what: say(`finding-${kind}`) })}
          </li>
        ))}
      </ul>
      <p>{say('suspects-best-first')}</p>
      <ol>
        {level.suspects.map((suspect, place) => (
          <li key={place}>
            {say(`suspect-${suspect.kind}`, {
              bag: say('suspect-not-named'),
              mass: mass(suspect.grams),
              after: local(suspect.afterAt),
              by: local(suspect.byAt),
            })}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** What went in. */
export function TipTable({ tips, timeZone }: { readonly tips: readonly TipRow[]; readonly timeZone: string }): VNode {
  const title = say('hopper-tips', { count: tips.length });
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={title}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">{say('tip-what')}</th>
            <th scope="col">{say('tip-opened')}</th>
            <th scope="col">{say('tip-off')}</th>
            <th scope="col" class="number">
              {say('tip-poured')}
            </th>
            <th scope="col">{say('tip-known-by')}</th>
          </tr>
        </thead>
        <tbody>
          {tips.map((tip) => (
            <tr key={tip.id}>
              <th scope="row">
                <TipName tip={tip} />
              </th>
              <td>{localText(tip.openedAt, timeZone) + (tip.isLate ? ` · ${say('tip-time-stated')}` : '')}</td>
              <td>{tip.offAt === null ? say('tip-hangs-still') : localText(tip.offAt, timeZone)}</td>
              <td class="number">{mass(Math.max(0, tip.netGrams - (tip.restGrams ?? 0)))}</td>
              <td>{say(`known-by-${tip.identifiedBy}`)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function TipName({ tip }: { readonly tip: TipRow }): VNode {
  if (tip.bagId !== null) return <a href={`/thread?code=${tip.bagId}`}>{tip.bagNumber}</a>;
  return <span>{tip.binNumber ?? say('tip-unread')}</span>;
}

/** What left, and the levels that were seen. */
export function ExitTable({ view, timeZone }: { readonly view: PeriodView; readonly timeZone: string }): VNode {
  const title = say('hopper-exits');
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={title}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">{say('exit-what')}</th>
            <th scope="col">{say('exit-which')}</th>
            <th scope="col" class="number">
              {say('exit-mass')}
            </th>
          </tr>
        </thead>
        <tbody>
          {view.runs.map(({ runId, number, fromCount, toCount, grams }) => (
            <tr key={runId}>
              <th scope="row">
                <a href={`/runs/${runId}`}>{number}</a>
              </th>
              <td>{say('exit-packs', { from: fromCount + 1, to: toCount })}</td>
              <td class="number">{mass(grams)}</td>
            </tr>
          ))}
          {view.removals.map(({ removalId, kind, grams, removedAt }) => (
            <tr key={removalId}>
              <th scope="row">{say(`exit-${kind}`)}</th>
              <td>{localText(removedAt, timeZone)}</td>
              <td class="number">{mass(grams)}</td>
            </tr>
          ))}
          {view.levels.map(({ id, how, lowerGrams, upperGrams, seenAt }) => (
            <tr key={id}>
              <th scope="row">{say(`level-${how}`)}</th>
              <td>{localText(seenAt, timeZone)}</td>
              <td class="number">{say('level-between', { lower: mass(lowerGrams), upper: mass(upperGrams) })}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
