import { Button } from 'react-aria-components';
import type { FlightRow, LessonPage, Overview } from '../../../electron/bridge/library-calls.ts';
import type { AppState } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import { lessonPath } from '../../state/unsaid.ts';
import { SignForm } from './sign-form.tsx';
import { ranged } from './flight-list.tsx';
import { standardWords } from './standard-words.ts';
import { useOnce } from './use-once.ts';

interface Props {
  readonly page: LessonPage;
  readonly overview: Overview;
  readonly session: Session;
}

interface ListProps extends Props {
  readonly state: AppState;
}

/** What was flown, in its order, each with what the student thought of it and who signed its debrief. */
export function LessonApproaches({ page, overview, state, session }: ListProps) {
  const { approaches } = page;
  const { once } = useOnce();
  if (approaches.length === 0)
    return (
      <section>
        <h2>Approaches</h2>
        <p>No approach was found in the logs of this lesson.</p>
      </section>
    );
  return (
    <section>
      <table className="lesson-approaches">
        <caption>Approaches</caption>
        <thead>
          <tr>
            <th scope="col">UTC</th>
            <th scope="col">Facility</th>
            <th scope="col">Outcome</th>
            <th scope="col">Level</th>
            <th scope="col">Score</th>
          </tr>
        </thead>
        <tbody>
          {approaches.map((row) => (
            <tr key={`${row.debriefId} ${row.number}`}>
              <td>{row.startUtc.slice(11, 16)}</td>
              <td>
                {row.facility}
                <span className="aside beside">{standardWords(state, row.standardId)}</span>
              </td>
              <td>
                <Button className="link" onPress={() => once(() => session.library.open(row.debriefId))}>
                  {row.summary}
                </Button>
                <Estimates row={row} page={page} />
              </td>
              <td>{ranged(row.levelLow, row.levelHigh)}</td>
              <td>{ranged(row.scoreLow, row.scoreHigh)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Signatures page={page} overview={overview} session={session} />
    </section>
  );
}

/** What the student thought before the debrief was shown, beside what came of it. */
function Estimates({ row, page }: { readonly row: FlightRow; readonly page: LessonPage }) {
  const own = page.estimates.filter(
    ({ debrief_id, about_utc }) =>
      debrief_id === row.debriefId && (about_utc === null || about_utc === row.startUtc),
  );
  return own.map(({ id, level, words }) => (
    <span key={id} className="aside beside">
      Student’s own estimate: {level === null ? '' : `level ${level}`}
      {level !== null && words ? ', ' : ''}
      {words ? `“${words}”` : ''}
    </span>
  ));
}

function Signatures({ page, overview, session }: Props) {
  const { signatures } = page;
  const debriefs = [...new Map(page.approaches.map((row) => [row.debriefId, row])).values()];
  return (
    <div className="signatures">
      {signatures.length === 0 ? null : (
        <ul className="plain" aria-label="Who signed">
          {signatures.map(({ debriefId, act, name, signedUtc, signed, current }) => (
            <li key={`${debriefId} ${act} ${name} ${signed}`}>
              {act === 'graded' ? 'Graded' : 'Countersigned'} by {name}, {signedUtc.slice(0, 10)}
              {debriefs.length > 1 ? ` (${placeOf(page, debriefId)})` : ''}
              {signed === current
                ? ''
                : '. The debrief was made anew since: what was signed is kept beside it'}
            </li>
          ))}
        </ul>
      )}
      <SignForm
        debriefs={debriefs}
        overview={overview}
        session={session}
        path={`${lessonPath(page.lesson)}/sign`}
      />
    </div>
  );
}

function placeOf({ approaches }: LessonPage, id: string): string {
  const first = approaches.find(({ debriefId }) => debriefId === id);
  return first ? `${first.facility}, ${first.startUtc.slice(11, 16)} UTC` : 'a debrief';
}
