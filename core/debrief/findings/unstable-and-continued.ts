import { surelyContinued } from '../../standard/safety.ts';
import type { GateItem } from '../../standard/judgement.ts';
import { listed } from '../../units/listed.ts';
import { whole } from '../../units/whole.ts';
import { scaleFraction, sideWords } from './say.ts';
import { threshold, type Evidence, type FindingRule } from './rule.ts';

const THRESHOLDS = {
  gate: threshold(
    500,
    'ft',
    "the standard's own gate and limits (its verdict, proven), but for bank, which passes",
  ),
  continuedThrough: threshold(300, 'ft', 'as for level 1: by then a go-around would have been begun (ours)'),
};

/** The names of what is told by which item of a gate. */
const KEYS: Readonly<Record<GateItem, string>> = {
  localizer: 'localizerFullScale',
  glidepath: 'glidepathFullScale',
  airspeed: 'airspeedOffKt',
  sink: 'sinkFpm',
  bank: 'bankDeg',
};

/** From 500 to 300 ft at a usual rate. */
const AFTER_S = 20;

/** Past the gate all the same. */
export const UNSTABLE_AND_CONTINUED: FindingRule = {
  id: 'unstable-and-continued',
  kind: 'fault',
  title: 'Not stable at 500 ft, and continued',
  thresholds: THRESHOLDS,
  stoodOff: null,
  byHand: false,
  coveredBy: [],
  find: ({ sitting, judgement }) => {
    const gate = judgement.gates.find((found) => found.gate === 'gate-500')!;
    const failed = gate.items.filter(({ item, verdict }) => verdict === 'not-met' && item !== 'bank');
    if (failed.length === 0 || !surelyContinued(sitting, gate)) return null;
    const evidence: Record<string, number> = Object.fromEntries(
      failed.map(({ item, measured }) => [KEYS[item], measured!]),
    );
    const counting = judgement.gates.find(({ counts }) => counts)!;
    // The words of the gate that counts come first where that one failed already.
    if (counting !== gate && counting.verdict === 'not-met') evidence['failedAtFt'] = counting.heightFt;
    return { startS: gate.timeS!, endS: Math.min(gate.timeS! + AFTER_S, sitting.approach.endS), evidence };
  },
  text: (evidence) => {
    const passed = `passed 500 ft ${listed(itemWords(evidence))}, and continued below 300 ft.`;
    const { failedAtFt } = evidence;
    if (failedAtFt === undefined)
      return `You ${passed} Not stable at 500 ft means going around there and then.`;
    const first = whole(failedAtFt);
    return (
      `Not stable at ${first} ft, which counts here, nor at 500 ft: you ${passed} ` +
      `Not stable at ${first} ft means going around there and then.`
    );
  },
  practise:
    'Call "stable" or "going around" aloud at 500 ft on every approach. Fly three on which your instructor upsets one thing ' +
    'just before.',
};

function itemWords({ localizerFullScale, glidepathFullScale, airspeedOffKt, sinkFpm }: Evidence): string[] {
  return [
    ...(localizerFullScale === undefined
      ? []
      : [
          `${scaleFraction(localizerFullScale)} ${sideWords(localizerFullScale, 'localizer')} of the localizer`,
        ]),
    ...(glidepathFullScale === undefined
      ? []
      : [
          `${scaleFraction(glidepathFullScale)} ${sideWords(glidepathFullScale, 'glidepath')} on the glidepath`,
        ]),
    ...(sinkFpm === undefined ? [] : [`sinking ${whole(sinkFpm)} ft/min`]),
    ...(airspeedOffKt === undefined
      ? []
      : [`${whole(Math.abs(airspeedOffKt))} kt ${airspeedOffKt > 0 ? 'too fast' : 'too slow'}`]),
  ];
}
