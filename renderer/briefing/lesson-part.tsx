import type { Briefing } from '../../core/briefing/briefing.ts';

/** What this flight is for; nothing where nobody said. */
export function LessonPart({ briefing: { objective, goals } }: { readonly briefing: Briefing }) {
  if (objective === null && goals.length === 0) return null;
  return (
    <section>
      <h2>This lesson</h2>
      {objective === null ? null : <p>{objective}</p>}
      {goals.length === 0 ? null : (
        <>
          <p className="aside">Goals from last time</p>
          <ul>
            {goals.map((goal, i) => (
              <li key={`${i} ${goal}`}>{goal}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
