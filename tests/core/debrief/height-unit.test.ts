import { describe, expect, it } from 'vitest';
import { debriefLog, defineFacility } from '../../../core/analyze.ts';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import type { LogSettings } from '../../../core/log/log.ts';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { FEET_PER_METRE } from '../../../core/units/units.ts';
import type { FacilityFile } from '../../support/flight/facility-file.ts';
import { bareLog } from '../../support/files/bare-log.ts';
import { fly } from '../../support/flight/fly.ts';
import { CHOUGHFELL } from '../../support/samples/choughfell.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { WHIMBRELNESS } from '../../support/samples/whimbrelness.ts';
import * as flown from '../../support/scenarios/approaches.ts';
import { randomPlan } from '../../support/scenarios/random-plan.ts';
import { idle } from '../log/reading.ts';

const inMetres = (ft: number) => ft / FEET_PER_METRE;
const asItIs = (ft: number) => ft;

async function debriefed(
  text: string,
  file: FacilityFile = PETRELHOLM,
  settings: LogSettings = {},
): Promise<Debrief> {
  const defined = defineFacility(JSON.stringify(file), 'facility.json');
  if (!defined.ok) throw new Error(defined.refusal.message);
  const source = { name: 'flight.csv', sha256: () => '', size: text.length, chunks: [text] };
  const debrief = await debriefLog(source, defined.value, settings, idle);
  if (!debrief.ok) throw new Error(debrief.refusal.message);
  return debrief.value;
}

const isDoubted = ({ log }: Debrief) => log.issues.some(({ code }) => code === 'height-unit-doubtful');

const AERODROMES = [
  ['near sea level', PETRELHOLM],
  ['near sea level, the localizer offset', WHIMBRELNESS],
  ['at 5,800 ft', CHOUGHFELL],
] as const;

describe.each(AERODROMES)('metres whose unit nothing names, at an aerodrome %s', (_, file) => {
  it.each([
    ['a landing', flown.straightInLanding],
    ['a missed approach', flown.missedStraightAhead],
  ])('judge nobody after %s: the head says why and what to do', async (_name, plan) => {
    const debrief = await debriefed(bareLog(fly(plan(file)), 'alt', inMetres), file);
    expect(debrief.approaches).toHaveLength(1);
    const [approach] = debrief.approaches;
    expect(approach).toMatchObject({ grade: null, findings: [], criteria: [], stability: [], issues: [] });
    expect(debrief.log.issues[0]).toMatchObject({ code: 'height-unit-doubtful', severity: 'warning' });
    const head = debriefText(debrief).replaceAll(/\s+/g, ' ').slice(0, 250);
    expect(head).toContain('Not judged: the heights are probably metres');
    expect(head).toContain('--unit "alt=m"');
    expect(head).toContain('"What was recognised"');
  });

  it('are judged once their unit is said', async () => {
    const text = bareLog(fly(flown.straightInLanding(file)), 'alt', inMetres);
    const debrief = await debriefed(text, file, { units: { alt: 'm' } });
    expect(isDoubted(debrief)).toBe(false);
    expect(debrief.approaches[0]!.criteria.find(({ id }) => id === 'glidepath-final')!.verdict).toBe('met');
  });

  it('are judged when they are feet, as with the unit named', async () => {
    const truth = fly(flown.straightInLanding(file));
    const debrief = await debriefed(bareLog(truth, 'alt', asItIs), file);
    expect(isDoubted(debrief)).toBe(false);
    const named = await debriefed(bareLog(truth, 'alt (ft)', asItIs), file);
    expect(debrief.approaches).toEqual(named.approaches);
  });
});

describe('heights whose unit nothing names', () => {
  it('are doubted as well where they are feet and another column made metres likely', async () => {
    const text = bareLog(fly(flown.straightInLanding(CHOUGHFELL)), 'alt,wind (km/h)', asItIs);
    const debrief = await debriefed(text, CHOUGHFELL, { units: { alt: 'm' } });
    expect(isDoubted(debrief), 'the user said metres').toBe(false);
    const lines = text.replace('wind (km/h)', 'speed (km/h)').replaceAll(/(\.\d\d)$/gm, '$1,160');
    const beside = await debriefed(lines, CHOUGHFELL);
    expect(beside.approaches.map(({ grade }) => grade)).toEqual([null]);
    expect(beside.approaches[0]!.summary).toMatch(/^Not judged: the heights are probably feet .*"alt=ft"/);
  });

  it('stay feet where one flew in low and level and then down: that is a fault, and is told', async () => {
    // High until 4 NM, where the path stands at 1,350 ft. The runway is so low that no roll tells feet from metres.
    const lowAt = (levelFt: number) => (ft: number) => (ft > 1400 ? ft : Math.min(ft, levelFt));
    const truth = fly(flown.straightInLanding(WHIMBRELNESS));
    for (const levelFt of [300, 350, 400, 500, 700]) {
      const debrief = await debriefed(bareLog(truth, 'alt', lowAt(levelFt)), WHIMBRELNESS);
      expect(debrief.approaches, `${levelFt} ft`).toHaveLength(1);
      expect(isDoubted(debrief), `${levelFt} ft`).toBe(false);
    }
  });

  it('are never doubted where the file names their unit, however they were flown', async () => {
    const debrief = await debriefed(bareLog(fly(flown.straightInLanding(PETRELHOLM)), 'alt (ft)', inMetres));
    expect(isDoubted(debrief)).toBe(false);
  });

  it('are told from one another on flights of chance', async () => {
    for (let seed = 0; seed < 25; seed++) {
      const truth = fly(randomPlan(seed));
      const feet = await debriefed(bareLog(truth, 'alt', asItIs), truth.plan.facility);
      expect(isDoubted(feet), `${seed} in feet`).toBe(false);
      const metres = await debriefed(bareLog(truth, 'alt', inMetres), truth.plan.facility);
      const judged = metres.approaches.filter(({ grade, findings }) => grade !== null || findings.length > 0);
      expect(judged, `${seed} in metres`).toEqual([]);
    }
  });
});
