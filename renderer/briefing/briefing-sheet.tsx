import type { Briefing } from '../../core/briefing/briefing.ts';
import { briefingFacts } from '../../core/briefing/briefing-facts.ts';
import { descentTable, needleTable, pathTable } from '../../core/briefing/briefing-tables.ts';
import type { Paper } from '../../core/briefing/papers.ts';
import { windSentences } from '../../core/briefing/wind-sentences.ts';
import { briefingMark, facilityWords } from '../../core/briefing/words.ts';
import { PLACE_CAUTIONS } from '../../core/report/place-cautions.ts';
import { FiguresTable } from './figures-table.tsx';
import { LessonPart } from './lesson-part.tsx';
import { MissedApproach } from './missed-approach.tsx';
import { ToCheck } from './to-check.tsx';
import { unbroken } from './unbroken.ts';

/** The sheet of one approach. What it is marked with stands behind it, and on paper at the foot of every page. */
export function BriefingSheet({ briefing, paper }: { readonly briefing: Briefing; readonly paper: Paper }) {
  return (
    <div className={`briefing ${paper}`}>
      <article>
        <h1>{facilityWords(briefing)}</h1>
        <dl className="briefing-facts">
          {briefingFacts(briefing).map(({ label, value, remark }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>
                <strong>{unbroken(value)}</strong> <span>{unbroken(remark)}</span>
              </dd>
            </div>
          ))}
        </dl>
        <FiguresTable table={pathTable(briefing)} />
        {briefing.temperatureC === null ? null : <p className="aside">{PLACE_CAUTIONS.temperature}</p>}
        <FiguresTable table={descentTable(briefing)} />
        {briefing.wind === null ? null : <p>{unbroken(windSentences(briefing).join(' '))}</p>}
        <FiguresTable table={needleTable(briefing)} />
        <MissedApproach briefing={briefing} />
        <LessonPart briefing={briefing} />
        <ToCheck issues={briefing.toCheck} />
      </article>
      <footer className="mark">
        <p>{briefingMark(briefing)}</p>
      </footer>
    </div>
  );
}
