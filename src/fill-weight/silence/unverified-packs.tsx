import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Silence } from './silences.js';

interface VerifiedProps {
  readonly countedPackCount: number;
  /** Counted and weighed. */
  readonly verifiedPackCount: number;
  readonly unverifiedPackCount: number;
  /** Taken out by hand as rejects or samples: perhaps weighed, and not counted. */
  readonly takenOutPackCount: number;
}

/** How many of the counted packs are verified by weight: a line beside the verdict, which is about those alone. */
export function VerifiedLine({ of }: { readonly of: VerifiedProps }): VNode | null {
  const { countedPackCount, verifiedPackCount, unverifiedPackCount, takenOutPackCount } = of;
  if (countedPackCount === 0) return null;
  const facts = {
    counted: countText(countedPackCount),
    verified: countText(verifiedPackCount),
    count: countText(unverifiedPackCount),
  };
  return (
    <p>
      <strong>{say(unverifiedPackCount === 0 ? 'verified-all' : 'verified-some', facts)}</strong>{' '}
      {unverifiedPackCount === 0 ? null : say('unverified-do', facts)}{' '}
      {takenOutPackCount === 0 ? null : say('unverified-may-be-more', { count: countText(takenOutPackCount) })}
    </p>
  );
}

interface SilencesProps {
  readonly silences: readonly Silence[];
  readonly timeZone: string;
}

/** When weighers sent nothing while packs were counted, and what is still unverified of that. */
export function Silences({ silences, timeZone }: SilencesProps): VNode | null {
  if (silences.length === 0) return null;
  return (
    <section id="unverified">
      <Table
        caption={say('silences-caption')}
        columns={[
          { head: say('silence-weigher'), align: 'code' },
          { head: say('silence-since') },
          { head: say('silence-until') },
          { head: say('silence-counted'), align: 'number' },
          { head: say('silence-weighed'), align: 'number' },
          { head: say('silence-unverified'), align: 'number' },
        ]}
        rows={silences.map((silence) => ({
          key: silence.id,
          isLoud: !silence.isVerified,
          cells: [
            silence.weigherCode,
            localText(silence.sinceAt, timeZone),
            silence.untilAt === null ? say('silence-lasts') : localText(silence.untilAt, timeZone),
            countText(silence.countedPackCount),
            countText(silence.weighedPackCount),
            silence.isVerified ? say('silence-come') : countText(silence.unverifiedPackCount),
          ],
        }))}
      />
      <p class="quiet">{say('silences-say')}</p>
    </section>
  );
}
