import type { ComponentChildren, VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { HiddenEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { ScanBand, type Scanned } from '../../platform/web/kit/scan-band.js';
import { localText, sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import type { CommandWord } from './line-commands.js';
import type { BagAtTip, ScanReading } from './scan-reading.js';
import type { ShiftView } from './shift-view.js';

interface BandProps {
  readonly viewer: Viewer;
  readonly view: ShiftView;
  /** An act of the page was refused: the band says it, and what to do. */
  readonly trouble: FormTrouble | null;
}

/** The last scan: what it was, and what may be done with it. It stands at one place and never moves. */
export function LineBand({ viewer, view, trouble }: BandProps): VNode {
  const action = `/line/${view.line.id}`;
  if (trouble !== null && view.scan === null) {
    const scanned: Scanned = { word: say('band-refused'), sentence: troubleText(trouble), tone: 'must-not' };
    return <ScanBand action={action} scanned={scanned} />;
  }
  const { scan } = view;
  if (scan === null) return <ScanBand action={action} hint={say('line-band-hint')} />;
  return (
    <ScanBand action={action} scanned={scannedOf(scan, viewer.timeZone)}>
      <BandActs viewer={viewer} view={view} scan={scan} />
    </ScanBand>
  );
}

function troubleText({ sentence, fields }: FormTrouble): string {
  return [sentence, ...Object.values(fields)].join(' ');
}

function scannedOf(scan: ScanReading, timeZone: string): Scanned {
  switch (scan.kind) {
    case 'bag':
      return bagScanned(scan, timeZone);
    case 'tipped': {
      const { number } = scan.bag;
      const at = scan.at === null ? '–' : localText(scan.at, timeZone);
      const sentence = say('band-tipped', { bag: number, at, by: scan.by });
      return { word: say('band-tipped-word'), sentence, tone: 'must-not', digits: lastDigits(number) };
    }
    case 'wrong-check':
      return { word: say('band-unknown'), sentence: say('band-wrong-check', { text: scan.text }), tone: 'must-not' };
    case 'unknown':
      return { word: say('band-unknown'), sentence: say('band-unknown-says', { text: scan.text }), tone: 'attention' };
    case 'command':
      return { word: say('band-command'), sentence: say(`band-command-${scan.word}`), tone: 'quiet' };
    case 'other':
      return {
        word: say(scan.what).toUpperCase(),
        sentence: say('band-other-says', { name: scan.name }),
        tone: 'quiet',
      };
    default:
      return {
        word: say(`band-${scan.kind}`),
        sentence: say(`band-${scan.kind}-says`, { name: scan.name }),
        tone: 'quiet',
      };
  }
}

function bagScanned(scan: BagAtTip, timeZone: string): Scanned {
  const { bag, grade, state, refusal, hanging } = scan;
  const facts = { bag: bag.number, kilograms: kilogramsText(bag.remainingGrams), grade, state: say(`state-${state}`) };
  const digits = lastDigits(bag.number);
  if (refusal !== null) {
    const sentence = sayLocally(refusal.code, refusal.facts, timeZone);
    return { word: state === 'on-hold' ? say('band-hold') : say('band-stop'), sentence, tone: 'must-not', digits };
  }
  if (hanging !== null) {
    const at = localText(hanging.openedAt, timeZone);
    return { word: say('band-hangs'), sentence: say('band-hangs-says', { ...facts, at }), tone: 'attention', digits };
  }
  return { word: say('band-bag'), sentence: say('band-bag-says', facts), tone: 'quiet', digits };
}

/** The end of a number, by which people tell bags apart. */
function lastDigits(number: string): string {
  return number.slice(-4);
}

interface ActsProps {
  readonly viewer: Viewer;
  readonly view: ShiftView;
  readonly scan: ScanReading;
}

function BandActs({ viewer, view, scan }: ActsProps): VNode | null {
  const at = `/line/${view.line.id}`;
  switch (scan.kind) {
    case 'bag':
      return <BagActs viewer={viewer} at={at} scan={scan} />;
    case 'pallet':
      return <ActLink href={`${at}/pallets/${scan.id}`} says={say('band-pallet-act')} tone="asked" />;
    case 'film':
      return (
        <ActLink href={`${at}/film?film=${encodeURIComponent(scan.name)}`} says={say('line-to-film')} tone="asked" />
      );
    case 'badge':
      return <ActLink href={`${at}/person`} says={say('line-change-person')} tone="asked" />;
    case 'other':
      return <ActLink href={scan.href} says={say('band-show')} />;
    case 'command':
      return <CommandAct view={view} word={scan.word} />;
    case 'wrong-check':
      return <ActLink href={`${at}/unread`} says={say('line-to-unread')} />;
    default:
      return null;
  }
}

function BagActs({
  viewer,
  at,
  scan,
}: {
  readonly viewer: Viewer;
  readonly at: string;
  readonly scan: BagAtTip;
}): VNode | null {
  const { bag, refusal, hanging } = scan;
  if (hanging !== null) {
    return (
      <>
        <EntryForm viewer={viewer} action={`${at}/off/${hanging.id}`} queue="tip" class="one-touch">
          <Act says={say('band-off-empty')} />
        </EntryForm>
        <ActLink href={`${at}/off/${hanging.id}`} says={say('band-weigh-back')} />
      </>
    );
  }
  if (refusal !== null) {
    return (
      <EntryForm viewer={viewer} action={`${at}/refusals`} class="one-touch">
        <HiddenEntry name="bag" value={bag.number} />
        <Act says={say('band-already-in')} tone="plain" />
      </EntryForm>
    );
  }
  return (
    <>
      <TipForm viewer={viewer} at={at} bag={bag.number}>
        <HiddenEntry name="isOff" value="true" />
        <Act says={say('band-tip-whole')} />
      </TipForm>
      <TipForm viewer={viewer} at={at} bag={bag.number}>
        <Act says={say('band-tip-part')} tone="plain" />
      </TipForm>
    </>
  );
}

interface TipFormProps {
  readonly viewer: Viewer;
  readonly at: string;
  readonly bag: string;
  readonly children: ComponentChildren;
}

function TipForm({ viewer, at, bag, children }: TipFormProps): VNode {
  return (
    <EntryForm viewer={viewer} action={`${at}/tips`} queue="tip" class="one-touch">
      <HiddenEntry name="bag" value={bag} />
      {children}
    </EntryForm>
  );
}

const commandPaths = { empty: 'level', 'undo-last': 'undo', 'hand-over': 'handover' } as const;

interface CommandProps {
  readonly view: ShiftView;
  readonly word: CommandWord;
}

/** What a command of the card leads to; the buttons below do the others. */
function CommandAct({ view, word }: CommandProps): VNode | null {
  if (word !== 'empty' && word !== 'undo-last' && word !== 'hand-over') return null;
  const href = `/line/${view.line.id}/${commandPaths[word]}`;
  return <ActLink href={href} says={say(`band-do-${word}`)} tone="asked" />;
}
