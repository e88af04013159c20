import { CheckLine } from '../../line-checks/check-line.js';
import { WeighHandSample } from '../../fill-weight/weigh-hand-sample.js';
import { ChangeCode } from '../../packing/change-code.js';
import { CloseRun } from '../../packing/close-run.js';
import { CountPacks } from '../../packing/count-packs.js';
import { FitFilm } from '../../packing/fit-film.js';
import { RemoveSugar } from '../../packing/remove-sugar.js';
import { StartLineAgain } from '../../packing/start-line-again.js';
import { StopLine } from '../../packing/stop-line.js';
import { ConfirmOpening } from '../../reconciliation/confirm-opening.js';
import { SignHandover } from '../../reconciliation/sign-handover.js';
import { CheckScale } from '../../plant/check-scale.js';
import { SetCoderClock } from '../../plant/set-coder-clock.js';
import { HoldSinceLastGood } from '../../tracing/hold-since-last-good.js';
import type { LineAct } from '../life/act.js';
import type { CheckStation } from '../life/check-stations.js';
import { idIn } from '../set-up/demo-hand.js';
import type { Players } from './players.js';

export const linePlayers: Players<LineAct> = {
  count: async (hand, { run, packCount, countedAt, occasion }, { by }) => {
    const form = { packCount, countedAt, occasion };
    await hand.give(CountPacks).execute(hand.asked(by), hand.idOf('run', run), form);
  },
  'print-code': async (hand, { run, code, packCount, changedAt }, { by }) => {
    const form = { code, packCount, changedAt };
    await hand.give(ChangeCode).execute(hand.asked(by), hand.idOf('run', run), form);
  },
  'fit-film': async (hand, { run, film, packCount, fittedAt }, { by }) => {
    const form = { film, kind: 'film', supplierCode: 'FS-01', packCount, fittedAt } as const;
    await hand.give(FitFilm).execute(hand.asked(by), hand.idOf('run', run), form);
  },
  'stop-line': async (hand, { stop, run, reason, packCount, stoppedAt }, { by }) => {
    const form = { run: hand.idOf('run', run), stopReason: reason, packCount, stoppedAt };
    const { id } = await hand.give(StopLine).execute(hand.asked(by), form);
    hand.remember('stop', stop, id);
  },
  'start-again': async (hand, { stop, at }, { by }) => {
    await hand.give(StartLineAgain).execute(hand.asked(by), hand.idOf('stop', stop), { startedAgainAt: at });
  },
  remove: async (hand, { what, line, packCount, netGrams, reason, fate, removedAt }, { by }) => {
    await hand.give(RemoveSugar).execute(hand.asked(by), {
      kind: what,
      lineId: idIn(hand.plant.lines, line),
      scaleId: idIn(hand.plant.scales, 'P1'),
      ...{ packCount, netGrams, removalReason: reason, fate, removedAt },
    });
  },
  'close-run': async (hand, { run, packCount, loosePackCount, closedAt }, { by }) => {
    const form = { packCount, loosePackCount, closedAt };
    await hand.give(CloseRun).execute(hand.asked(by), hand.idOf('run', run), form);
  },
  'weigh-packs': async (hand, { run, netDecigrams, weighedAt }, { by }) => {
    const scaleId = idIn(hand.plant.scales, 'B1');
    const form = { run: hand.idOf('run', run), netDecigrams: [...netDecigrams], scaleId, weighedAt };
    await hand.give(WeighHandSample).execute(hand.asked(by), form);
  },
  'set-coder-clock': async (hand, { line, offsetSeconds, validFrom, reason }, { by }) => {
    const coderId = idIn(hand.plant.coders, line);
    const form = { coderId, offsetSeconds, uncertaintySeconds: 60, validFrom, reason };
    await hand.give(SetCoderClock).execute(hand.asked(by), form);
  },
  'hand-over': async (hand, { line, loosePackCount, packCount, incoming }, { by }) => {
    const next = incoming === null ? null : { personId: hand.personId(incoming), agrees: true, disagreement: null };
    const form = { lineId: idIn(hand.plant.lines, line), loosePackCount, packCount };
    const { id } = await hand.give(SignHandover).execute(hand.asked(by), form, next);
    hand.remember('handover', line, id);
  },
  'open-line': async (hand, { line }, { by }) => {
    await hand.give(ConfirmOpening).execute(hand.asked(by), hand.idOf('handover', line), {});
  },
  'check-scales': async (hand, _act, { by, at }) => {
    for (const scale of ['S1', 'P1', 'B1']) {
      // What the known weights show: a little above, as the scale is.
      const deviationMilligrams = scale === 'S1' ? 200_000 : scale === 'P1' ? 6000 : 0;
      const form = { scaleId: idIn(hand.plant.scales, scale), deviationMilligrams, checkedAt: at };
      await hand.give(CheckScale).execute(hand.asked(by), form);
    }
  },
  'check-line': async (hand, { line, station, passed, packCount, readCode, checkedAt }, { by }) => {
    const planId = hand.plant.checkPlans.get(`${line} ${station}`) ?? '';
    const results = piecesOf[station].map((code) => ({ code, passed }));
    const action = passed ? null : ('line-stopped' as const);
    const form = { results, readCode, packCount, action, checkedAt };
    const { id } = await hand.give(CheckLine).execute(hand.asked(by), planId, form);
    if (!passed) hand.remember('failed-check', line, id);
  },
  'hold-since-good': async (hand, { hold, line }, { by }) => {
    const form = { check: hand.idOf('failed-check', line) };
    const { holds } = await hand.give(HoldSinceLastGood).execute(hand.asked(by), form);
    hand.remember('hold', hold, holds[0]?.id ?? '');
  },
};

/** What each check of the demo looks at. */
const piecesOf: Readonly<Record<CheckStation, readonly string[]>> = {
  weigher: ['pack'],
  detector: ['fe', 'nfe', 'sus'],
  sieve: ['all'],
  seal: ['all'],
  code: [],
};
