import type { ApproachDebrief, Debrief } from '../../core/debrief/debrief.ts';
import { approachHeading } from '../../core/report/debrief-text.ts';
import { measureSentences } from '../../core/report/measure-lines.ts';
import { PLACE_CAUTIONS } from '../../core/report/place-cautions.ts';
import { statedSentence } from '../../core/report/stated-lines.ts';
import type { Dots, Sheet } from '../../core/sheet/sheet.ts';
import { frameOf, wholeView } from '../sheet/frame.ts';
import { SheetFigure } from '../sheet/sheet-figure.tsx';
import { CriteriaTable } from '../tables/criteria-table.tsx';
import { EventTable } from '../tables/event-table.tsx';
import { SafetyNotice } from '../tables/safety-notice.tsx';
import { StabilityTable } from '../tables/stability-table.tsx';
import { BeyondTable } from './beyond-table.tsx';
import { FindingsSection } from './findings-section.tsx';
import { NeedleTable } from './needle-table.tsx';
import { PathTable } from '../tables/path-table.tsx';
import { SpreadTable } from './spread-table.tsx';
import { Working } from './working.tsx';

interface Props {
  readonly approach: ApproachDebrief;
  readonly sheet: Sheet;
  /** What was better than the time before; null where that is not known. */
  readonly sinceLast: string | null;
  readonly log: Debrief['log'];
  readonly id: string;
  readonly dots: Dots;
}

/** One approach: the sentence and its sheet on one page of paper, and behind them what they stand on. */
export function ApproachSection({ approach, sheet, sinceLast, log, id, dots }: Props) {
  const stated = statedSentence(approach);
  const sentences = measureSentences(approach, log);
  return (
    <section id={id} className="approach">
      <p className="which">{approachHeading(approach, log)}</p>
      <h2>{approach.summary}</h2>
      <SafetyNotice approach={approach} />
      {approach.outcome === 'missed-approach' ? <p className="aside">{PLACE_CAUTIONS.goingAround}</p> : null}
      {approach.issues.map(({ message, tip }) => (
        <p key={message} className="notice">
          <strong>Check the facility first.</strong> {message} {tip}
        </p>
      ))}
      <PrintedSheet sheet={sheet} id={id} dots={dots} />
      <FindingsSection approach={approach} sinceLast={sinceLast} />
      <CriteriaTable approach={approach} dots={dots} />
      <StabilityTable gates={approach.stability} />
      <EventTable approach={approach} log={log} dots={dots} />
      <NeedleTable segments={approach.segments} dots={dots} />
      <BeyondTable sheet={sheet} dots={dots} />
      <SpreadTable segments={approach.segments} />
      {sentences.length === 0 ? null : <h3>What was measured</h3>}
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {stated === null ? null : <p>{stated}</p>}
      <Working approach={approach} />
      <details open>
        <summary>The numbers behind the sheet</summary>
        <PathTable sheet={sheet} dots={dots} />
      </details>
    </section>
  );
}

/** So wide that the words of the sheet are still read when a page of paper is filled by it. */
const SHEET_WIDTH = 780;

function PrintedSheet({ sheet, id, dots }: Pick<Props, 'sheet' | 'id' | 'dots'>) {
  const frame = frameOf(sheet, wholeView(sheet, { widthPx: SHEET_WIDTH, scale: dots, recorded: true }));
  return (
    <figure>
      <SheetFigure frame={frame} patternId={`${id}-sheet`} />
      <figcaption>{PLACE_CAUTIONS.needles}</figcaption>
    </figure>
  );
}
