import type { DebriefSegment, DebriefSpread } from '../../core/debrief/debrief.ts';
import { feetToSide, SEGMENT_WORDS } from '../../core/report/segment-lines.ts';
import { whole } from '../../core/units/whole.ts';

interface Row {
  readonly segment: DebriefSegment;
  readonly name: string;
  readonly spread: DebriefSpread;
  readonly words: (value: number) => string;
}

/** How speeds and feet were spread over each stretch of an approach. */
export function SpreadTable({ segments }: { readonly segments: readonly DebriefSegment[] }) {
  const rows = segments.flatMap(rowsOf);
  if (rows.length === 0) return null;
  return (
    <table className="spreads">
      <caption>How speeds and heights were held</caption>
      <thead>
        <tr>
          <th scope="col">Stretch</th>
          <th scope="col">Value</th>
          <th scope="col" className="number">
            Mean
          </th>
          <th scope="col" className="number">
            Lowest
          </th>
          <th scope="col" className="number">
            Highest
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ segment, name, spread, words }) => (
          <tr key={`${segment.startUtc} ${name}`}>
            <td>{SEGMENT_WORDS[segment.kind]}</td>
            <th scope="row">{name}</th>
            <td className="number">{words(spread.mean)}</td>
            <td className="number">{words(spread.lowest)}</td>
            <td className="number">{words(spread.highest)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function rowsOf(segment: DebriefSegment): Row[] {
  const { airspeed, verticalSpeed, centrelineOffsetFt, heightAboveGlidepathFt } = segment;
  const estimated = airspeed?.estimated
    ? `, within ${airspeed.errorKt} kt: estimated from groundspeed and the stated wind`
    : '';
  const named: [string, DebriefSpread | null, Row['words']][] = [
    [`Airspeed, kt${estimated}`, airspeed, whole],
    ['Vertical speed, ft/min', verticalSpeed, whole],
    ['Centreline', centrelineOffsetFt, (ft) => feetToSide(ft, ['right', 'left', 'on it'])],
    ['Glidepath', heightAboveGlidepathFt, (ft) => feetToSide(ft, ['high', 'low', 'on it'])],
  ];
  return named.flatMap(([name, spread, words]) => (spread ? [{ segment, name, spread, words }] : []));
}
