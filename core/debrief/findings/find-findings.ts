import type { Issue } from '../../issue/issue.ts';
import type { Span } from '../../numeric/polyline.ts';
import { utcText } from '../../units/utc.ts';
import type { DebriefFinding } from '../debrief.ts';
import type { Asked } from './asked.ts';
import type { FindingRule, Found } from './rule.ts';
import { FINDING_RULES } from './rules.ts';
import { surelyStoodOff } from './stood-off.ts';

interface Told extends Found {
  readonly rule: FindingRule;
}

/**
 * What an instructor would say of an approach: faults in order of consequence, then what was good, each kind ranked
 * from 1. Nothing is said of a log too slow to judge, nor where the landing contradicts the facility or that is a draft.
 */
export function findFindings(
  asked: Asked,
  facilityDoubts: readonly Issue[],
): Omit<DebriefFinding, 'remark'>[] {
  if (asked.judgement.noLevelBecause !== null || facilityDoubts.length > 0) return [];
  const told: Told[] = [];
  for (const rule of FINDING_RULES) {
    const found = mayBeTold(rule, asked) ? rule.find(asked) : null;
    if (found !== null && isSure(rule, found, asked) && !isCovered(rule, found, told))
      told.push({ ...found, rule });
  }
  return (['fault', 'praise'] as const).flatMap((kind) =>
    told.filter(({ rule }) => rule.kind === kind).map((one, i) => findingDebrief(one, i + 1)),
  );
}

function mayBeTold({ byHand }: FindingRule, { sitting }: Asked): boolean {
  return !(byHand && sitting.stated.flown === 'coupled');
}

/** Not of what the instructor flew, and of a needle only where it surely stood off. */
function isSure({ stoodOff }: FindingRule, found: Found, asked: Asked): boolean {
  if (asked.sitting.stated.instructorFlew.some((span) => overlap(span, found))) return false;
  return stoodOff === null || surelyStoodOff(asked, stoodOff, found);
}

function isCovered({ coveredBy }: FindingRule, found: Found, told: readonly Told[]): boolean {
  return told.some((before) => coveredBy.includes(before.rule.id) && overlap(before, found));
}

function overlap(a: Span, b: Span): boolean {
  return a.startS <= b.endS && b.startS <= a.endS;
}

function findingDebrief(
  { rule, evidence, startS, endS }: Told,
  rank: number,
): Omit<DebriefFinding, 'remark'> {
  return {
    id: rule.id,
    kind: rule.kind,
    rank,
    title: rule.title,
    text: rule.text(evidence),
    practise: rule.practise,
    evidence,
    fromUtc: utcText(startS)!,
    toUtc: utcText(endS)!,
  };
}
