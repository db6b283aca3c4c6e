import type { Debrief } from '../../core/debrief/debrief.ts';
import { zoneOf } from '../../core/report/debrief-text.ts';
import { dayAndClock } from '../../core/report/plain-words.ts';

/** What it is of, and room for the names of those who were there. */
export function Head({ debrief: { log, facility, standard, engineVersion } }: { readonly debrief: Debrief }) {
  const facts: readonly (readonly [string, string])[] = [
    ['Recorded', recordedWords(log)],
    ['Log', log.file],
    ['Held to', standard.title],
    ['Made with', `Halfdot ${engineVersion}`],
  ];
  return (
    <header>
      <h1>{facility.ident ? `${facility.name} (${facility.ident})` : facility.name}</h1>
      <dl>
        {facts.map(([term, words]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      <p className="names">
        <span>Student</span>
        <span>Instructor</span>
      </p>
    </header>
  );
}

/** When, by the times that the log has. */
function recordedWords(log: Debrief['log']): string {
  const [from, to] = [dayAndClock(log.startUtc), dayAndClock(log.endUtc)];
  const span = `${from.clock} to ${to.clock}`;
  if (log.timeReference === 'elapsed') return `${span}, ${zoneOf(log)}; its date is not known`;
  const until = from.day === to.day ? to.clock : `${to.day}, ${to.clock}`;
  return `${from.day}, ${from.clock} to ${until}, ${zoneOf(log)}`;
}
