import type { VNode } from 'preact';
import { HoldLink } from '../disposition/hold-link.js';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import { ActLink } from '../platform/web/kit/act.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { ThreadBasis } from './thread-basis.js';
import type { Dossier } from './dossier.js';
import { ThreadDossier } from './thread-dossier.js';
import { RibbonPictures } from './ribbon-picture.js';
import type { Ribbons } from './ribbons.js';
import { LineEvents, Packed } from './thread-packed.js';
import { Customers, Pallets } from './thread-pallets.js';
import { Returns } from './thread-returns.js';
import { ThreadQuality } from './thread-quality.js';
import { RuledOut } from './thread-ruled-out.js';
import { resultsBySource } from './source-results.js';
import { Sources } from './thread-sources.js';
import { answerSentence, gramPreciseText, printedTimeTexts } from './thread-text.js';
import type { Thread } from './thread.js';

interface ThreadPageProps {
  readonly viewer: Viewer;
  readonly thread: Thread;
  /** How the code was read to mean this, where it was not read as typed. */
  readonly fits?: string;
  /** What its picture is drawn from; none of what is a bag. */
  readonly ribbons?: readonly Ribbons[];
  /** What the records show around packs; none of what is a bag. */
  readonly dossier?: Dossier | null;
  /** The search box, so that the next code can be typed at once. */
  readonly searchBox: VNode;
}

/** The thread of one thing: where it came from, what is known of that, and where else the same sugar went. */
export function threadPage({
  viewer,
  thread,
  fits = '',
  ribbons = [],
  dossier = null,
  ...rest
}: ThreadPageProps): VNode {
  const { searchBox } = rest;
  const { subject, sources, pallets } = thread;
  const results = resultsBySource(thread);
  const title = say(`thread-title-${subject.kind}`, { name: subject.name, at: subject.localTime ?? '' });
  return (
    <Shell title={title} viewer={viewer}>
      {searchBox}
      <section class="card" aria-labelledby="answer">
        <h2 id="answer">{say('thread-answer')}</h2>
        {fits === '' ? null : <p class="notice">{say('thread-read-as', { fits })}</p>}
        <p class="sentence">{answerSentence(thread)}</p>
        {printedTimeTexts(thread.printedTimes, viewer.timeZone).map((text) => (
          <p key={text}>{text}</p>
        ))}
        <ThreadFigures thread={thread} />
        <Acts viewer={viewer} thread={thread} />
      </section>
      <Packed parts={thread.packed} timeZone={viewer.timeZone} />
      <RibbonPictures of={ribbons} timeZone={viewer.timeZone} />
      <Sources caption="thread-sources" sources={sources.filter(({ word }) => word !== 'possible')} results={results} />
      <Sources
        caption="thread-sources-possible"
        sources={sources.filter(({ word }) => word === 'possible')}
        results={results}
      />
      <ThreadQuality expected={thread.expected} />
      <RuledOut lines={thread.ruledOut} timeZone={viewer.timeZone} />
      <Pallets caption="thread-pallets" pallets={pallets.filter(({ word }) => word !== 'possible')} />
      <Pallets caption="thread-pallets-possible" pallets={pallets.filter(({ word }) => word === 'possible')} />
      <Customers customers={thread.customers} />
      <Returns returns={thread.returns} timeZone={viewer.timeZone} />
      <LineEvents events={thread.lineEvents} timeZone={viewer.timeZone} />
      {dossier === null ? null : <ThreadDossier dossier={dossier} timeZone={viewer.timeZone} />}
      <ThreadBasis thread={thread} timeZone={viewer.timeZone} />
    </Shell>
  );
}

/** Where quality decides on it, and the hold that anybody may place. A delivery is held by its pallets, a liner lot by its bags. */
function Acts({ viewer, thread }: { readonly viewer: Viewer; readonly thread: Thread }): VNode | null {
  const { kind, id } = thread.subject;
  const { roles } = viewer.actor;
  const file = filesOf[kind];
  if (!mayDo(roles, 'place-holds')) return null;
  return (
    <div class="acts">
      {kind === 'liner-lot' ? (
        <ActLink
          href={`/quality/holds/new?code=${encodeURIComponent(id)}`}
          says={say('thread-hold-these')}
          tone="careful"
        />
      ) : (
        <HoldLink viewer={viewer} kind={kind} id={id} says={say('thread-hold-these')} />
      )}
      {file !== undefined && mayDo(roles, 'decide') ? (
        <ActLink href={`${file}/${id}`} says={say('thread-decide')} />
      ) : null}
      {mayDo(roles, 'run-recalls') ? <ActLink href={recallPath(thread)} says={say('thread-recall-these')} /> : null}
    </div>
  );
}

/** Where a recall of it begins: of packs with a printed time by their code, so that its minutes can be chosen. */
function recallPath({ subject: { id, name, localTime } }: Thread): string {
  return `/quality/recalls/new?code=${encodeURIComponent(localTime === null ? id : `${name} ${localTime}`)}`;
}

const filesOf: Readonly<Record<string, string>> = {
  lot: '/quality/lots',
  'bulk-bag': '/quality/bags',
  pallet: '/quality/pallets',
};

function ThreadFigures({ thread }: { readonly thread: Thread }): VNode {
  const { lowerGrams, grams, upperGrams } = thread.subjectGrams;
  const likely = thread.sources.reduce((sum, source) => sum + source.likelyGrams, 0);
  const between = say('thread-between', { lower: gramPreciseText(lowerGrams), upper: gramPreciseText(upperGrams) });
  const inKilograms = (of: number): string => say('thread-kilograms', { grams: gramPreciseText(of) });
  return (
    <dl class="figures">
      <div>
        <dt>{say('thread-sugar-in-it')}</dt>
        <dd>{inKilograms(grams)}</dd>
        <dd class="quiet">{between}</dd>
      </div>
      <div>
        <dt>{say('thread-likely-of-bags')}</dt>
        <dd>{inKilograms(likely)}</dd>
      </div>
      <div>
        <dt>{say('thread-not-explained')}</dt>
        <dd>{inKilograms(Math.max(0, grams - likely))}</dd>
      </div>
    </dl>
  );
}
