import { beforeAll, describe, expect, it } from 'vitest';
import { defineFacility, materialThere, type Flight } from '../../../core/analyze.ts';
import { composeDebrief } from '../../../core/debrief/compose-debrief.ts';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { isSaidToBeDraft } from '../../../core/facility/drafted-from.ts';
import { factsOf } from '../../../core/progress/approach-facts.ts';
import { draftsFromLanding } from '../../../core/records/draft-from-landing.ts';
import { draftFile } from '../../../core/records/draft-file.ts';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { idle } from '../log/reading.ts';
import { landingOf, recordedBy } from '../records/landed.ts';

/** Two landings on one runway: the first is drafted from, the other judged. */
const [DRAFTED, OTHER] = [1, 4] as const;
const LOG = { name: 'drafted.csv', sha256: 'ab'.repeat(32) };
const WARNING =
  'This facility is a draft from a landing: 6 values of it are not confirmed (position of the threshold, elevation of the threshold, true bearing of the runway, length of the runway, glidepath angle and threshold crossing height).';

let text = '';
let toConfirm: readonly string[] = [];
let other: Flight;

async function debriefedBy(unconfirmed: readonly string[]): Promise<Debrief> {
  const facility = JSON.parse(text);
  const origin = { landing: { logSha256: LOG.sha256, unconfirmed } };
  const named = { ...facility, name: 'A draft', runway: { designator: '09', ...facility.runway }, origin };
  const defined = defineFacility(JSON.stringify(named), 'draft.json');
  if (!defined.ok) throw new Error(defined.refusal.message);
  const unread = () => {
    throw new Error('the log is not to be read again');
  };
  const material = await materialThere(other, unread, defined.value, {}, idle);
  if (!material.ok) throw new Error(material.refusal.message);
  return composeDebrief(material.value);
}

beforeAll(async () => {
  const { track } = await recordedBy(landingOf(DRAFTED), 'augmented');
  const drafts = draftsFromLanding(LOG, track, { onDate: null });
  if (!drafts.ok) throw new Error(drafts.refusal.message);
  toConfirm = drafts.value[0]!.landing.unconfirmed;
  text = draftFile(drafts.value[0]!);
  other = await recordedBy(landingOf(OTHER), 'augmented');
});

describe('a flight debriefed by a draft that nobody has confirmed', () => {
  it('is not graded, nothing is advised, and nothing is measured from the guessed threshold', async () => {
    for (const unconfirmed of [toConfirm, ['runway.lengthFt'], ['runway.threshold.latDeg']]) {
      const { approaches } = await debriefedBy(unconfirmed);
      expect(approaches).toHaveLength(1);
      const { grade, notGradedBecause, findings, criteria, measures } = approaches[0]!;
      expect([grade, findings]).toEqual([null, []]);
      expect(notGradedBecause).toContain('the facility is a draft from a landing');
      expect(criteria.map(({ points }) => points)).toEqual(criteria.map(() => null));
      expect([measures.threshold, measures.touchdownDistanceFt, measures.rollout]).toEqual([
        null,
        null,
        null,
      ]);
      for (const key of ['threshold', 'touchdownDistanceFt', 'rollout'])
        expect(measures.unknown[key]).toContain('a draft from a landing');
    }
  });

  it('says so right below the first sentence, in plain words and once', async () => {
    const page = debriefText(await debriefedBy(toConfirm)).replaceAll(/\s+/g, ' ');
    expect(page).toMatch(
      /^By an unconfirmed draft of the facility: [a-z].* landed\. Check the facility first: /,
    );
    expect(page.split(WARNING)).toHaveLength(2);
    expect(page.indexOf(`Check the facility first: ${WARNING}`)).toBeLessThan(page.indexOf('What happened'));
    expect(page).not.toMatch(/runway left|past the threshold|Over the threshold|On the roll|Level \d/);
  });

  it('stands in no figure of progress, though it is told that it was flown', async () => {
    const known = { debriefId: 'd', lessonId: 'l', date: '2026-05-01', standardKey: 'k' };
    const confirmed = await debriefedBy([]);
    const [counted] = factsOf({ ...known, debrief: confirmed });
    expect([isSaidToBeDraft(confirmed.facility), counted!.isByDraft]).toEqual([false, false]);
    expect(counted!.criteria.length).toBeGreaterThan(3);
    for (const unconfirmed of [toConfirm, ['runway.lengthFt']]) {
      const debrief = await debriefedBy(unconfirmed);
      // What there is to be kept out.
      expect(debrief.approaches[0]!.criteria.some(({ verdict }) => verdict !== 'not-assessed')).toBe(true);
      const { criteria, gates, wentOn, level, score, ...flown } = factsOf({ ...known, debrief })[0]!;
      expect([criteria, gates, wentOn, level, score]).toEqual([[], [], 'not-assessed', null, null]);
      const { criteria: _c, gates: _g, wentOn: _w, level: _l, score: _s, ...same } = counted!;
      expect(flown).toEqual({ ...same, isByDraft: true });
    }
  });

  it('still shows the needles', async () => {
    const { approaches } = await debriefedBy(toConfirm);
    const final = approaches[0]!.segments.find(({ kind }) => kind === 'final')!;
    expect(final.localizer!.meanFullScale).not.toBeNull();
    expect(final.glidepath!.meanFullScale).not.toBeNull();
  });

  it('is judged as by any facility once all is confirmed', async () => {
    const debrief = await debriefedBy([]);
    const [approach] = debrief.approaches;
    expect(approach!.notGradedBecause ?? '').not.toContain('draft');
    expect(approach!.measures.touchdownDistanceFt).toBeGreaterThan(0);
    expect(approach!.measures.rollout).not.toBeNull();
    expect(debriefText(debrief)).toMatch(/past the threshold/);
    expect(debriefText(debrief)).not.toMatch(/draft from a landing|unconfirmed/);
  });
});
