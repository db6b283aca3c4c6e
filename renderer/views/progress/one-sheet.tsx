import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Progress, ShownApproach } from '../../../core/progress/progress.ts';
import { dayOf } from '../../../core/progress/sentences.ts';
import { PLACE_CAUTIONS } from '../../../core/report/place-cautions.ts';
import type { Dots, Sheet } from '../../../core/sheet/sheet.ts';
import { frameOf, wholeView } from '../../sheet/frame.ts';
import { SheetFigure } from '../../sheet/sheet-figure.tsx';
import { HostProblem } from '../../state/host.ts';
import type { Session } from '../../state/session.ts';
import { useOnce } from '../library/use-once.ts';

interface Props {
  readonly shown: NonNullable<Progress['shown']>;
  readonly dots: Dots;
  readonly session: Session;
}

/** The last graded approach on its sheet, with the best one over it. */
export function OneSheet({ shown: { last, best }, dots, session }: Props) {
  const isOne = last.debriefId === best.debriefId && last.number === best.number;
  const { sheets, problem } = useSheets(isOne ? [last] : [last, best], session);
  const { once } = useOnce();
  const open = ({ debriefId }: ShownApproach) => once(() => session.library.open(debriefId));
  return (
    <section className="one-sheet">
      <h2>
        {isOne
          ? 'The last approach, which is the best one there too'
          : 'The last approach, and the best one there over it'}
      </h2>
      <p>
        The last, at {last.facility}: {whichWords(last)}.{' '}
        <Button className="link" onPress={() => void open(last)}>
          Open its debrief
        </Button>
        {isOne ? null : (
          <>
            {' '}
            Marked A, the best there: {whichWords(best)}.{' '}
            <Button className="link" onPress={() => void open(best)}>
              Open its debrief
            </Button>
          </>
        )}
      </p>
      {problem === null ? null : <p role="alert">{problem}</p>}
      {sheets === null ? (
        problem === null ? (
          <p className="working">The logs are being read …</p>
        ) : null
      ) : (
        <Drawn sheets={sheets} dots={dots} />
      )}
    </section>
  );
}

function whichWords({ date, startUtc, level, isOpen, score }: ShownApproach): string {
  const graded = isOpen ? `level ${level} at best` : `level ${level}, score ${Math.round(score)}`;
  return `${dayOf(date)}, ${startUtc.slice(11, 16)} UTC, ${graded}`;
}

/** As wide as the page is on a small laptop. */
const WIDTH = 1200;

function Drawn({
  sheets: [first, ...others],
  dots,
}: {
  readonly sheets: readonly Sheet[];
  readonly dots: Dots;
}) {
  if (!first) return null;
  const frame = frameOf(first, wholeView(first, { widthPx: WIDTH, scale: dots }));
  return (
    <figure>
      <SheetFigure frame={frame} others={others} patternId="one-sheet" />
      <figcaption className="aside">{PLACE_CAUTIONS.needles}</figcaption>
    </figure>
  );
}

/** Their sheets, drawn from the logs in the library; null until they are there. */
function useSheets(approaches: readonly ShownApproach[], { keptSheets }: Session) {
  const [sheets, setSheets] = useState<readonly Sheet[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const asked = JSON.stringify(approaches.map(({ debriefId, number }) => [debriefId, number]));
  useEffect(() => {
    const stop = new AbortController();
    const sheetOf = async ([debriefId, number]: [string, number]) =>
      (await keptSheets.of(debriefId, stop.signal))[number - 1]!;
    setSheets(null);
    setProblem(null);
    Promise.all((JSON.parse(asked) as [string, number][]).map(sheetOf)).then(
      (drawn) => {
        if (!stop.signal.aborted) setSheets(drawn);
      },
      (error: unknown) => {
        if (stop.signal.aborted) return;
        setProblem(error instanceof HostProblem ? error.message : 'This is a fault of the program.');
      },
    );
    return () => stop.abort();
  }, [asked, keptSheets]);
  return { sheets, problem };
}
