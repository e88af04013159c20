import type { VNode } from 'preact';
import type { StandOut } from '../../complaints/stand-out.js';
import { propertyText } from '../../laboratory/sample-text.js';
import { hasSentence, say } from '../../platform/sentences/sentences.js';
import { Table } from '../../platform/web/kit/table.js';
import { sayLocally } from '../../platform/web/local-text.js';

/** What the records show about the packs, the most unusual first, each with its numbers; the usual is said to be. */
export function StandOuts({ of, timeZone }: { readonly of: readonly StandOut[]; readonly timeZone: string }): VNode {
  const named = (...words: readonly StandOut['word'][]): readonly StandOut[] =>
    of.filter(({ word }) => words.includes(word));
  const remarkable = named('outside-limits', 'unusual');
  const [few, usual] = [named('too-few'), named('usual')];
  const counts = { count: remarkable.length, few: few.length, usual: usual.length };
  return (
    <section>
      <p class="sentence">{say(remarkable.length === 0 ? 'stand-out-nothing' : 'stand-out-says', counts)}</p>
      <StandOutTable caption="stand-out-caption" of={remarkable} timeZone={timeZone} />
      <Folded says="stand-out-few" of={few} timeZone={timeZone} />
      <Folded says="stand-out-usual" of={usual} timeZone={timeZone} />
      <p class="quiet">{say('stand-out-basis')}</p>
    </section>
  );
}

/** What nobody has to look at first; open where somebody wants to. */
function Folded({ says, of, timeZone }: { says: string; of: readonly StandOut[]; timeZone: string }): VNode | null {
  if (of.length === 0) return null;
  return (
    <details>
      <summary>{say(says, { count: of.length })}</summary>
      <StandOutTable caption={`${says}-caption`} of={of} timeZone={timeZone} />
    </details>
  );
}

interface TableProps {
  readonly caption: string;
  readonly of: readonly StandOut[];
  readonly timeZone: string;
}

function StandOutTable({ caption, of, timeZone }: TableProps): VNode | null {
  if (of.length === 0) return null;
  return (
    <Table
      caption={say(caption)}
      columns={[
        { head: say('stand-out-what') },
        { head: say('stand-out-value'), align: 'number' },
        { head: say('stand-out-limit'), align: 'number' },
        { head: say('stand-out-median'), align: 'number' },
        { head: say('stand-out-as-far'), align: 'number' },
        { head: say('stand-out-z'), align: 'number' },
        { head: say('stand-out-verdict') },
      ]}
      rows={of.map((found, place) => ({
        key: `${place} ${found.code}`,
        isLoud: found.word === 'outside-limits',
        cells: [
          <a key="what" href={found.href}>
            {whatText(found, timeZone)}
          </a>,
          valueText(found),
          limitText(found),
          found.median === null ? '–' : numberText(found.median),
          say('stand-out-count', { count: found.asFarCount, of: found.referenceCount }),
          found.robustZ === null ? '–' : found.robustZ.toFixed(1),
          say(`stand-out-is-${found.word}`),
        ],
      }))}
    />
  );
}

function whatText({ code, facts }: StandOut, timeZone: string): string {
  const { property } = facts;
  return sayLocally(
    code,
    { ...facts, ...(typeof property === 'string' ? { property: propertyText(property) } : {}) },
    timeZone,
  );
}

/** With its unit; properties of the laboratory carry theirs in their own name. */
function valueText({ unit, value }: StandOut): string {
  const code = `stand-out-unit-${unit}`;
  const count = numberText(value);
  return hasSentence(code) ? say(code, { count }) : count;
}

function limitText({ least = null, most = null }: StandOut): string {
  const limits = [
    ...(least === null ? [] : [say('stand-out-least', { limit: numberText(least) })]),
    ...(most === null ? [] : [say('stand-out-most', { limit: numberText(most) })]),
  ];
  return limits.length === 0 ? '–' : limits.join(', ');
}

function numberText(value: number): string {
  return String(Number(value.toFixed(3)));
}
