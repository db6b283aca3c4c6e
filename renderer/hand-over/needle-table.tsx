import type { DebriefNeedle, DebriefSegment } from '../../core/debrief/debrief.ts';
import { duration } from '../../core/report/plain-words.ts';
import { SEGMENT_WORDS, shownSeconds } from '../../core/report/segment-lines.ts';
import type { Dots } from '../../core/sheet/sheet.ts';

const HEADS = ['RMS, dots', 'Largest, dots', 'Within ¼', 'Within ½', 'Within ¾', 'Turns a minute'];

interface Needle {
  readonly segment: DebriefSegment;
  readonly name: string;
  readonly needle: DebriefNeedle;
}

/** How the needles stood on each stretch of an approach. */
export function NeedleTable({ segments, dots }: { segments: readonly DebriefSegment[]; dots: Dots }) {
  const needles = segments.flatMap(needlesOf);
  if (needles.length === 0) return null;
  return (
    <>
      <table className="needles">
        <caption>
          How the needles stood <span className="aside">shares of the time, of full scale</span>
        </caption>
        <thead>
          <tr>
            <th scope="col">Stretch</th>
            <th scope="col">Needle</th>
            {HEADS.map((words) => (
              <th key={words} scope="col" className="number">
                {words}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {needles.map(({ segment, name, needle }) => (
            <tr key={`${segment.startUtc} ${name}`}>
              <td>{stretchWords(segment)}</td>
              <th scope="row">{name}</th>
              {cellsOf(needle, dots).map((words, i) => (
                <td key={HEADS[i]} className="number">
                  {words}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {needles.map(({ segment, name, needle }) => {
        const shown = segment.kind === 'final' ? shownSeconds(needle) : null;
        if (shown === null) return null;
        return (
          <p key={name}>
            {name}, on all of final: with the beam’s own error the needle may have shown {shown} s beyond the
            limit.
          </p>
        );
      })}
    </>
  );
}

function needlesOf(segment: DebriefSegment): Needle[] {
  const { localizer, glidepath } = segment;
  return [
    ...(localizer ? [{ segment, name: 'Localizer', needle: localizer }] : []),
    ...(glidepath ? [{ segment, name: 'Glidepath', needle: glidepath }] : []),
  ];
}

function stretchWords({ kind, durationS, unrecordedS }: DebriefSegment): string {
  const unrecorded = unrecordedS >= 1 ? `, ${duration(unrecordedS)} of it not recorded` : '';
  return `${SEGMENT_WORDS[kind]}, ${duration(durationS)}${unrecorded}`;
}

function cellsOf(needle: DebriefNeedle, dots: Dots): string[] {
  const { rmsFullScale, maxAbsFullScale, insideShare, reversalsPerMinute } = needle;
  if (rmsFullScale === null || insideShare === null) return ['not recorded', '', '', '', '', ''];
  const share = (part: number) => `${Math.round(part * 100)} %`;
  return [
    (rmsFullScale * dots).toFixed(1),
    (maxAbsFullScale! * dots).toFixed(1),
    share(insideShare.quarter),
    share(insideShare.half),
    share(insideShare.threeQuarters),
    reversalsPerMinute === null ? 'not told' : reversalsPerMinute.toFixed(1),
  ];
}
