import { resample, swingsOf, type Swing } from '../../approach/swings.ts';
import { finalOf } from '../../standard/case.ts';
import { listed } from '../../units/listed.ts';
import { needleColumn, over, type Asked } from './asked.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { scaleFraction, seconds, sideWords } from './say.ts';

const THRESHOLDS = {
  swing: threshold(
    0.6,
    'of full scale from side to side',
    'half of the tolerance to either side, and through the middle',
  ),
  side: threshold(
    0.25,
    'of full scale on each side',
    'nearer the middle it is a correction that came out right',
  ),
  swings: threshold(2, 'swings on end', 'one is a correction that went too far'),
};

/** From one side of the path to the other and back. */
export const CHASED_GLIDEPATH: FindingRule = {
  id: 'chased-glidepath',
  kind: 'fault',
  title: 'Chased the glidepath',
  thresholds: THRESHOLDS,
  stoodOff: 'glidepath',
  byHand: true,
  coveredBy: [
    'unstable-and-continued',
    'from-above',
    'descended-early',
    'descended-late',
    'hunting-glidepath',
  ],
  find,
  text: ({ firstFullScale, secondFullScale, thirdFullScale, lastsS }) =>
    `In ${seconds(lastsS!)} you went through the glidepath and back: ` +
    `${listed([firstFullScale!, secondFullScale!, thirdFullScale!].map((v) => `${scaleFraction(v)} ${sideWords(v, 'glidepath')}`))}. ` +
    'Each rate was held until the needle was on the other side: take half of the correction off while it comes in.',
  practise:
    'Name the rate that holds the path and fly no rate farther than 200 ft/min from it; go back to it when the needle has come half ' +
    'way. One final with the vertical speed called every ten seconds.',
};

function find(asked: Asked): Found | null {
  const final = finalOf(asked.sitting);
  if (final === null) return null;
  for (const part of over(asked, needleColumn(asked, 'glidepath'), final)) {
    const swings = swingsOf(resample(part, 1), THRESHOLDS.swing.value);
    for (const [i, first] of swings.entries()) {
      const second = swings[i + 1];
      if (second === undefined || !isAcross(first) || !isAcross(second)) continue;
      const evidence = {
        firstFullScale: first.from,
        secondFullScale: first.to,
        thirdFullScale: second.to,
        lastsS: second.endS - first.startS,
      };
      return { startS: first.startS, endS: second.endS, evidence };
    }
  }
  return null;
}

function isAcross({ from, to }: Swing): boolean {
  return from * to < 0 && Math.min(Math.abs(from), Math.abs(to)) >= THRESHOLDS.side.value;
}
