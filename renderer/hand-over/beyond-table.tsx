import type { DebriefExcursion, DebriefSegment } from '../../core/debrief/debrief.ts';
import { dayAndClock } from '../../core/report/plain-words.ts';
import { SEGMENT_WORDS } from '../../core/report/segment-lines.ts';
import type { Dots } from './hand-over.ts';

/** Every time that a needle was beyond its limit, one a row. */
export function BeyondTable({ segments, dots }: { segments: readonly DebriefSegment[]; dots: Dots }) {
  const rows = segments.flatMap((segment) =>
    (['localizer', 'glidepath'] as const).flatMap((axis) =>
      (segment[axis]?.excursions ?? []).map((excursion) => ({ segment, axis, excursion })),
    ),
  );
  if (rows.length === 0) return null;
  const sorted = rows.toSorted((a, b) => a.excursion.startUtc.localeCompare(b.excursion.startUtc));
  return (
    <table className="beyond">
      <caption>Beyond the limit</caption>
      <thead>
        <tr>
          <th scope="col">From</th>
          <th scope="col">To</th>
          <th scope="col">Needle</th>
          <th scope="col" className="number">
            Farthest, dots
          </th>
          <th scope="col">Stretch</th>
          <th scope="col">How it is counted</th>
        </tr>
      </thead>
      <tbody>
        {sorted.map(({ segment, axis, excursion }) => (
          <tr key={`${axis} ${excursion.startUtc}`}>
            <td>{dayAndClock(excursion.startUtc).clock}</td>
            <td>{dayAndClock(excursion.endUtc).clock}</td>
            <th scope="row">{axis === 'localizer' ? 'Localizer' : 'Glidepath'}</th>
            <td className="number">
              {excursion.side} {(Math.abs(excursion.peakFullScale) * dots).toFixed(1)}
            </td>
            <td>{SEGMENT_WORDS[segment.kind]}</td>
            <td>{judgedWords(excursion)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function judgedWords({ prompt }: DebriefExcursion): string {
  if (prompt === null) return 'not judged';
  return prompt ? 'promptly corrected' : 'counted';
}
