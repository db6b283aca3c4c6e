import { useEffect, useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { whole } from '../../../core/units/whole.ts';
import type { Session } from '../../state/session.ts';
import { today } from '../../state/sources.ts';
import type { Draft, RecordsSummary, SourceWork } from '../../worker/sources-protocol.ts';
import { Working } from '../working.tsx';
import { IssueList } from './issue-list.tsx';
import { SearchBox } from './search-box.tsx';
import { useFileReading } from './use-file-reading.ts';

interface Props {
  readonly session: Session;
  readonly show: (draft: Draft) => void;
}

/** Official records: the file is read once, and an airport and runway are chosen out of its index from then on. */
export function RecordsPanel({ session, show }: Props) {
  const { reading, read, stop } = useFileReading<SourceWork['records']['out']>();
  const [kept, setKept] = useState<RecordsSummary | null>(null);
  useEffect(() => {
    void session.sources.records().then(setKept);
  }, [session]);
  const summary = reading.kind === 'read' ? reading.value.summary : kept;
  const scan = (file: File) => void read((progress) => session.sources.scan(file, progress));
  return (
    <section className="from-source" aria-labelledby="records-heading">
      <h2 id="records-heading">From official records</h2>
      <p className="aside">
        A file of ARINC 424 records, as aviation authorities publish it for download with every cycle. It is
        read here, on this machine, once; no file comes with Halfdot.
      </p>
      <FileTrigger onSelect={(files) => files?.[0] && scan(files[0])}>
        <Button className="button">{summary ? 'Read another file…' : 'Choose the file…'}</Button>
      </FileTrigger>
      {reading.kind === 'reading' ? (
        <Working words="Reading the records" share={reading.share} stop={stop} />
      ) : null}
      {reading.kind === 'refused' ? (
        <div className="failed" role="alert">
          <p>{reading.issue.message}</p>
          {reading.issue.tip ? <p>{reading.issue.tip}</p> : null}
        </div>
      ) : null}
      {summary && reading.kind !== 'reading' ? (
        <>
          <p role="status">{wordsOf(summary)}</p>
          <IssueList issues={summary.issues} />
          <Localizers key={wordsOf(summary)} session={session} show={show} />
        </>
      ) : null}
    </section>
  );
}

function wordsOf({ cycle, days, airports, approaches, unreadable }: RecordsSummary): string {
  const when =
    cycle === null ? 'Of no known cycle' : `Cycle ${cycle}${days ? `, ${days.first} to ${days.last}` : ''}`;
  const lost = unreadable === 0 ? '' : ` ${whole(unreadable)} records could not be read.`;
  return `${when}: ${whole(approaches)} localizers with a glidepath at ${whole(airports)} airports.${lost}`;
}

/** A word of the airport, the runway or the ident, and what has it. */
function Localizers({ session, show }: Props) {
  const [words, setWords] = useState('');
  const [found, setFound] = useState<SourceWork['localizers']['out'] | null>(null);
  useEffect(() => {
    let isLast = true;
    void session.sources.ask('localizers', { words }).then((answer) => isLast && setFound(answer));
    return () => {
      isLast = false;
    };
  }, [session, words]);
  const choose = async (airport: string, localizer: string) => {
    const draft = await session.sources.ask('recordDraft', { airport, localizer, day: today() });
    if (draft) show(draft);
  };
  return (
    <>
      <SearchBox words="Airport, runway or ident" value={words} say={setWords} />
      {found === null ? null : (
        <ul className="plain localizers" aria-label="Localizers">
          {found.first.map(
            ({ airport, airportName, runway, localizer, kind, hasGlideslope, frequencyMHz }) => (
              <li key={`${airport} ${localizer}`}>
                {hasGlideslope ? (
                  <Button className="link" onPress={() => void choose(airport, localizer)}>
                    {`${airport} ${kind} ${runway}`}
                  </Button>
                ) : (
                  <span className="unusable">{`${airport} ${kind} ${runway}`}</span>
                )}{' '}
                <span className="aside">
                  {[airportName, localizer, `${frequencyMHz.toFixed(2)} MHz`].filter(Boolean).join(', ')}
                  {hasGlideslope ? '' : ': without a glidepath, which is not supported'}
                </span>
              </li>
            ),
          )}
        </ul>
      )}
      {found && found.total > found.first.length ? (
        <p className="aside">{`${whole(found.total)} in all: type another word to see the others.`}</p>
      ) : null}
      {found?.total === 0 ? <p>Nothing has these words.</p> : null}
    </>
  );
}
