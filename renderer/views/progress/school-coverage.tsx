import type { School } from '../../../core/progress/school/school.ts';

/** Of what there is no figure, and what was left out. */
export function SchoolCoverage({ school: { coverage, leftOut } }: { readonly school: School }) {
  const { studentsWithoutLog, lessonsWithoutLog, logsWithoutApproach } = coverage;
  const lines = [
    ...(studentsWithoutLog.length > 0 ? [`Without a log: ${studentsWithoutLog.join(', ')}.`] : []),
    ...(lessonsWithoutLog > 0 ? [`${lessonsWithoutLog} lessons without a log.`] : []),
    ...(logsWithoutApproach > 0 ? [`${logsWithoutApproach} logs without an approach.`] : []),
    ...leftOut.map(({ sentence }) => sentence),
  ];
  if (lines.length === 0) return null;
  return (
    <section>
      <h2>Not in these figures</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
