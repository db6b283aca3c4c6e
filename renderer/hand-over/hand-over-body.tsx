import { approachHeading } from '../../core/report/debrief-text.ts';
import { ApproachSection } from './approach-section.tsx';
import { sinceLastSentence } from '../../core/progress/since-last.ts';
import { Closing } from './closing.tsx';
import { Head } from './head.tsx';
import type { HandOver } from './hand-over.ts';
import type { Dots } from '../../core/sheet/sheet.ts';

interface Props {
  readonly handOvers: readonly HandOver[];
  readonly dots: Dots;
}

/** All that the page says: of each log its head, its approaches, and what they stand on. */
export function HandOverBody({ handOvers, dots }: Props) {
  return (
    <main>
      {handOvers.map((handOver, i) => (
        <LogArticle
          key={`${i} ${handOver.debrief.log.sha256}`}
          handOver={handOver}
          id={handOvers.length === 1 ? '' : `log-${i + 1}-`}
          dots={dots}
        />
      ))}
    </main>
  );
}

/** `id` tells the parts of this log from those of another on the page. */
function LogArticle({ handOver, id, dots }: { handOver: HandOver; id: string; dots: Dots }) {
  const { debrief, sheets, sinceLast } = handOver;
  const { approaches, log } = debrief;
  const idOf = (index: number) => `${id}approach-${index}`;
  return (
    <article>
      <Head debrief={debrief} />
      {approaches.length > 1 ? (
        <nav aria-label={`Approaches of ${log.file}`}>
          <ul>
            {approaches.map((approach) => (
              <li key={approach.index}>
                <a href={`#${idOf(approach.index)}`}>{approachHeading(approach, log)}</a>
              </li>
            ))}
          </ul>
        </nav>
      ) : null}
      {approaches.length === 0 ? <h2>No approach was found</h2> : null}
      {approaches.map((approach, i) => (
        <ApproachSection
          key={approach.index}
          approach={approach}
          sheet={sheets[i]!}
          sinceLast={sinceLastSentence(sinceLast, approach)}
          log={log}
          id={idOf(approach.index)}
          dots={dots}
        />
      ))}
      {debrief.issues.map(({ message, tip }) => (
        <p key={message}>{tip ? `${message} ${tip}` : message}</p>
      ))}
      <Closing debrief={debrief} />
    </article>
  );
}
