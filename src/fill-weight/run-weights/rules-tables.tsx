import type { VNode } from 'preact';
import type { RunLine } from '../../core/average-quantity/judge-run.js';
import { say } from '../../platform/sentences/sentences.js';
import { Table } from '../../platform/web/kit/table.js';
import { outsideText, runVerdictTexts, type VerdictLineText, type VerdictText } from '../verdict-texts.js';
import type { MarketVerdict } from './run-weights.js';

/** Each rule of a market as a line: what was found, what is allowed, the verdict, and how that is known. */
export function RulesOfMarket({ verdict }: { readonly verdict: MarketVerdict }): VNode {
  return (
    <>
      {runVerdictTexts(verdict).map((text, place) => (
        <Table
          key={text.title}
          caption={text.title}
          columns={[
            { head: say('run-weights-rule') },
            { head: say('run-weights-verdict') },
            { head: say('run-weights-found') },
            { head: say('run-weights-source') },
          ]}
          rows={text.lines.map((line, at) => ({
            key: line.rule,
            cells: [line.rule, <strong>{line.verdict}</strong>, <Found line={line} />, line.source],
            isLoud: verdict.ruleSets[place]?.lines[at]?.verdict === 'broken',
          }))}
        />
      ))}
    </>
  );
}

function Found({ line: { says, notes } }: { readonly line: VerdictLineText }): VNode {
  return (
    <>
      {says}
      {notes.map((note) => (
        <>
          {' '}
          <small key={note}>{note}</small>
        </>
      ))}
    </>
  );
}

interface ByMarketProps {
  readonly verdicts: readonly MarketVerdict[];
  /** The address of the page, without what was chosen on it. */
  readonly path: string;
}

const comparedRules = ['mean', 'beyondT1', 'beyondT2', 'beyondMav'] as const satisfies readonly RunLine['rule'][];

/** The same packs under the rules of every market: a row for each law, once. */
export function RulesByMarket({ verdicts, path }: ByMarketProps): VNode {
  return (
    <Table
      caption={say('run-weights-by-market')}
      columns={[
        { head: say('run-weights-market') },
        ...comparedRules.map((rule) => ({ head: say(`fill-rule-${rule}`) })),
      ]}
      rows={verdicts.flatMap((verdict) => marketRows(verdict, path))}
    />
  );
}

function marketRows(verdict: MarketVerdict, path: string) {
  const { market, outside, ruleSets } = verdict;
  const link = <a href={`${path}?market=${market}`}>{say(`run-weights-market-${market}`)}</a>;
  if (outside !== null) return [{ key: market, cells: [link, outsideText(outside), '–', '–', '–'] }];
  const texts = runVerdictTexts(verdict);
  // A market's own law is the last: one that it shares has its row already.
  const [own, text] = [ruleSets.at(-1), texts.at(-1)];
  if (own === undefined || text === undefined) return [];
  return [
    {
      key: market,
      cells: [
        <>
          {link} <small>{text.title}</small>
        </>,
        ...comparedRules.map((rule) => ruleCell(own.lines, text, rule)),
      ],
      isLoud: verdict.overall === 'broken',
    },
  ];
}

function ruleCell(lines: readonly RunLine[], text: VerdictText, rule: RunLine['rule']): VNode | string {
  const line = text.lines[lines.findIndex((each) => each.rule === rule)];
  if (line === undefined) return '–';
  return (
    <>
      <strong>{line.verdict}</strong> {line.says}
    </>
  );
}
