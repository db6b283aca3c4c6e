import type { Remark } from '../../standard/stated.ts';
import type { DebriefFinding } from '../debrief.ts';

/** Findings with what was said to them; what was said to a finding that is there no more is not told. */
export function withRemarks(
  findings: readonly Omit<DebriefFinding, 'remark'>[],
  approachUtc: string,
  remarks: readonly Remark[],
): DebriefFinding[] {
  return findings.map((finding) => {
    const said = remarks.find(
      (remark) => remark.approachUtc === approachUtc && remark.finding === finding.id,
    );
    if (!said) return { ...finding, remark: null };
    const { verdict, words, answer } = said;
    return { ...finding, remark: { verdict, words, answer } };
  });
}
