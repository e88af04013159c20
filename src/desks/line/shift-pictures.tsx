import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { roundKilogramsText } from '../../platform/web/figures-text.js';
import { Balance } from '../../platform/web/kit/balance.js';
import { HopperColumn } from '../../platform/web/kit/hopper-column.js';
import { ShiftTape, type TapeMark } from '../../platform/web/kit/shift-tape.js';
import { clockText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { LinePoints } from './line-points.js';
import type { ShiftView } from './shift-view.js';

interface PicturesProps {
  readonly viewer: Viewer;
  readonly view: ShiftView;
}

/** The sentence that must balance, the hopper, and what happened when. */
export function ShiftPictures({ viewer, view }: PicturesProps): VNode {
  return (
    <>
      <KiloEquation view={view} />
      <div class="hopper-and-tape">
        <Column view={view} />
        <div>
          <Tape viewer={viewer} view={view} />
          <LinePoints viewer={viewer} view={view} />
        </div>
      </div>
    </>
  );
}

function KiloEquation({ view }: { readonly view: ShiftView }): VNode {
  const { balance, hopper } = view;
  if (balance === null || hopper === null) return <p class="sentence">{say('line-tips-nowhere')}</p>;
  const text = roundKilogramsText;
  const outs = [
    { code: 'packed', grams: balance.packedGrams },
    { code: 'rejected', grams: balance.rejectGrams },
    { code: 'sampled', grams: balance.sampleGrams },
    { code: 'swept', grams: balance.sweepingGrams },
  ].filter(({ code, grams }) => grams > 0 || code === 'packed');
  const sentence = say('line-sentence', {
    opening: text(balance.openingGrams),
    tipped: text(balance.tippedGrams),
    outs: outs.map(({ code, grams }) => say(`line-part-${code}`, { kilograms: text(grams) })).join(' + '),
    inside: text(balance.insideGrams),
    hopper: hopper.code,
  });
  const parts = [
    ...outs.map(({ code, grams }) => ({ label: say(`line-bar-${code}`), grams })),
    { label: say('line-bar-inside'), grams: balance.insideGrams, isOpen: true },
  ];
  const { doubtGrams } = balance;
  return (
    <section aria-label={say('line-adds-up')}>
      <Balance
        sentence={sentence}
        inLabel={say('line-bar-in')}
        inGrams={balance.openingGrams + balance.tippedGrams}
        parts={parts}
        gap={doubtGrams === 0 ? null : { label: say('line-bar-gap'), grams: Math.abs(doubtGrams) }}
      />
      {doubtGrams === 0 ? null : (
        <p class="notice">
          {say(doubtGrams < 0 ? 'line-records-short' : 'line-records-over', { kilograms: text(Math.abs(doubtGrams)) })}{' '}
          <a href={`/hoppers/${hopper.id}`}>{say('line-look-which')}</a>
        </p>
      )}
      {balance.hasAssumed ? <p class="quiet">{say('line-assumed')}</p> : null}
    </section>
  );
}

function Column({ view }: { readonly view: ShiftView }): VNode | null {
  const { level, hopper, layers } = view;
  if (level === null || hopper === null) return null;
  const facts = {
    hopper: hopper.name,
    kilograms: roundKilogramsText(level.grams),
    lower: roundKilogramsText(level.lowerGrams),
    upper: roundKilogramsText(level.upperGrams),
  };
  const likely = [...layers.layers].reverse().map(({ name, grams }) => ({ label: shortName(name), grams }));
  const ghosts = layers.olderBags.slice(0, 3).map((name) => ({ label: shortName(name), grams: 0, isGhost: true }));
  return (
    <section class="hopper-now">
      <h2>{hopper.name}</h2>
      <p class="level">
        <strong>{say('line-kilograms', { kilograms: facts.kilograms })}</strong>
        <br />
        <small>{say('line-may-be', facts)}</small>
      </p>
      <HopperColumn
        says={say('line-column-says', facts)}
        capacityGrams={hopper.capacityGrams}
        expectedGrams={level.grams}
        leastGrams={level.lowerGrams}
        mostGrams={level.upperGrams}
        layers={[...likely, ...ghosts]}
      />
      {layers.isMixed ? <p class="quiet">{say('line-layers-mixed')}</p> : null}
      {layers.olderCount > 0 ? <p class="quiet">{say('line-older-possible', { count: layers.olderCount })}</p> : null}
    </section>
  );
}

function shortName(name: string): string {
  return name.slice(-4);
}

function Tape({ viewer, view }: PicturesProps): VNode {
  const { shift, now, line, balance, runs, stops, pallets } = view;
  const tips = (balance?.tips ?? []).map(({ name, openedAt, isLate, isHanging }): TapeMark => {
    return { kind: isLate ? 'late' : 'tick', at: openedAt, text: `${shortName(name)}${isHanging ? '…' : ''}` };
  });
  const running = runs.map(({ fromAt, untilAt }): TapeMark => ({ kind: 'run', at: fromAt, untilAt }));
  const stood = stops
    .filter(({ stoppedAt, startedAgainAt }) => (startedAgainAt ?? now) >= shift.startsAt && stoppedAt <= now)
    .map(({ stoppedAt, startedAgainAt, reason }): TapeMark => {
      return { kind: 'stop', at: stoppedAt, untilAt: startedAgainAt, text: say(`stop-reason-${reason}`) };
    });
  const made = view.checksMade.map(({ occurredAt, passed }): TapeMark => {
    return { kind: passed ? 'done' : 'failed', at: occurredAt };
  });
  const due = view.checks.flatMap(({ dueAt, word }): TapeMark[] => {
    return dueAt === null || word === 'failed' ? [] : [{ kind: 'due', at: dueAt }];
  });
  const built = pallets.map(({ sscc, builtAt }): TapeMark => ({ kind: 'block', at: builtAt, text: sscc.slice(-4) }));
  return (
    <section class="tape-now">
      <ShiftTape
        says={say('line-tape-says', { line: line.name, until: clockText(shift.endsAt, viewer.timeZone) })}
        fromAt={shift.startsAt}
        untilAt={shift.endsAt}
        nowAt={now}
        timeZone={viewer.timeZone}
        rows={[
          { label: say('line-tape-tips'), marks: tips },
          { label: line.name, marks: [...running, ...stood] },
          { label: say('line-tape-checks'), marks: [...made, ...due] },
          { label: say('line-tape-pallets'), marks: built },
        ]}
      />
    </section>
  );
}
