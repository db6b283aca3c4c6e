import type { Input } from '../../../electron/bridge/calls.ts';
import type { LessonPage, Overview } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';
import { Choice, NumberBox, TextBox } from '../fields.tsx';
import { LONGEST } from './longest.ts';

interface Props {
  readonly page: LessonPage;
  readonly overview: Overview;
  readonly session: Session;
}

type Change = Input<'changeLesson'>['change'];

/** What is known of a lesson besides its logs; each field is kept when it is left. */
export function LessonFacts({ page: { lesson }, overview, session }: Props) {
  const { id } = lesson;
  const say = (change: Change) => void session.library.change('changeLesson', { id, change });
  const text = (words: string) => words || null;
  return (
    <section className="lesson-facts" aria-label="Lesson">
      <h2>Lesson</h2>
      <TextBox
        words="Instructor"
        value={lesson.instructor ?? ''}
        choices={overview.instructors}
        maxLength={LONGEST.name}
        say={(name) => say({ instructor: text(name) })}
      />
      <TextBox
        words="Number in the syllabus"
        maxLength={LONGEST.short}
        value={lesson.syllabus_number ?? ''}
        say={(number) => say({ syllabus_number: text(number) })}
      />
      <TextBox
        words="Objective"
        maxLength={LONGEST.words}
        value={lesson.objective ?? ''}
        say={(objective) => say({ objective: text(objective) })}
      />
      <TextBox
        words="Aircraft"
        maxLength={LONGEST.short}
        value={lesson.aircraft ?? ''}
        say={(aircraft) => say({ aircraft: text(aircraft) })}
      />
      <Speeds lesson={lesson} say={say} />
      <Choice
        words="Conditions"
        value={lesson.conditions ?? ''}
        choose={(value) => say({ conditions: (value || null) as 'imc' | 'simulated' | 'vmc' | null })}
      >
        <option value="">not said</option>
        <option value="imc">instrument (IMC)</option>
        <option value="simulated">simulated (hood)</option>
        <option value="vmc">visual (VMC)</option>
      </Choice>
    </section>
  );
}

interface SpeedsProps {
  readonly lesson: LessonPage['lesson'];
  readonly say: (change: Change) => void;
}

/** Those of the aircraft, as a record. */
function Speeds({ lesson, say }: SpeedsProps) {
  const range = { min: 30, max: 250 };
  return (
    <>
      <div className="pair">
        <NumberBox
          {...range}
          words="Target on final, kt"
          value={lesson.target_airspeed_kt}
          say={(target_airspeed_kt) => say({ target_airspeed_kt })}
        />
        <NumberBox {...range} words="Vref, kt" value={lesson.vref_kt} say={(vref_kt) => say({ vref_kt })} />
      </div>
      <p className="aside">
        A record of the lesson: these speeds judge nothing. A debrief is judged by what is stated on its own
        page.
      </p>
    </>
  );
}
