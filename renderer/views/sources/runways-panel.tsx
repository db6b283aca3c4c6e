import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import type { RunwayEnd, RunwayRow, RunwayTable } from '../../../core/records/runway-table.ts';
import { whole } from '../../../core/units/whole.ts';
import type { Session } from '../../state/session.ts';
import type { Draft, SourceWork } from '../../worker/sources-protocol.ts';
import { Working } from '../working.tsx';
import { IssueList } from './issue-list.tsx';
import { SearchBox } from './search-box.tsx';
import { useFileReading } from './use-file-reading.ts';

interface Props {
  readonly session: Session;
  readonly show: (draft: Draft) => void;
}

/** So many airports are offered at once. */
const OFFERED = 30;

/** The runways of the open airports dataset: an airport is looked for, and one end of a runway chosen. */
export function RunwaysPanel({ session, show }: Props) {
  const table = useFileReading<SourceWork['runways']['out']>();
  const airport = useFileReading<SourceWork['runways']['out']>();
  const [file, setFile] = useState<File | null>(null);
  const open = (chosen: File) => {
    setFile(chosen);
    void table.read((progress) => session.sources.runways(chosen, null, progress));
  };
  const choose = (ident: string) =>
    void airport.read((progress) => session.sources.runways(file!, ident, progress));
  const { reading } = table;
  return (
    <section className="from-source" aria-labelledby="runways-heading">
      <h2 id="runways-heading">From a table of runways</h2>
      <p className="aside">
        The file runways.csv of the open airports dataset, which volunteers keep and anybody may use. It knows
        where runways are, and nothing of localizers and glidepaths: those are to be typed from the chart.
      </p>
      <FileTrigger acceptedFileTypes={['.csv']} onSelect={(files) => files?.[0] && open(files[0])}>
        <Button className="button">{file ? 'Read another file…' : 'Choose the file…'}</Button>
      </FileTrigger>
      {reading.kind === 'reading' ? (
        <Working words="Reading the runways" share={reading.share} stop={table.stop} />
      ) : null}
      {reading.kind === 'refused' ? <IssueList issues={[reading.issue]} /> : null}
      {reading.kind === 'read' ? (
        <>
          <p role="status">{`${whole(reading.value.table.airports.length)} airports.`}</p>
          <IssueList issues={reading.value.issues} />
          <Airports table={reading.value.table} choose={choose} />
        </>
      ) : null}
      {airport.reading.kind === 'read' ? (
        <Runways rows={airport.reading.value.table.runways} session={session} show={show} />
      ) : null}
    </section>
  );
}

function Airports({
  table,
  choose,
}: {
  readonly table: RunwayTable;
  readonly choose: (ident: string) => void;
}) {
  const [words, setWords] = useState('');
  const asked = words.trim().toUpperCase();
  const found = asked === '' ? [] : table.airports.filter((ident) => ident.toUpperCase().startsWith(asked));
  return (
    <>
      <SearchBox words="Ident of the airport" value={words} say={setWords} />
      <ul className="plain idents" aria-label="Airports">
        {found.slice(0, OFFERED).map((ident) => (
          <li key={ident}>
            <Button className="link" onPress={() => choose(ident)}>
              {ident}
            </Button>
          </li>
        ))}
      </ul>
      {found.length > OFFERED ? <p className="aside">{`${found.length} in all: type on.`}</p> : null}
      {asked !== '' && found.length === 0 ? <p>No airport begins so.</p> : null}
    </>
  );
}

function Runways({ rows, session, show }: Props & { readonly rows: readonly RunwayRow[] }) {
  const draft = async (row: RunwayRow, end: 'low' | 'high') => {
    const made = await session.sources.ask('runwayDraft', { row, end });
    if (made) show(made);
  };
  return (
    <ul className="plain" aria-label="Runways">
      {rows.map((row) => (
        <li key={row.line} className="row">
          {(['low', 'high'] as const).map((end) => (
            <Button key={end} className="link" onPress={() => void draft(row, end)}>
              {`${row.airportIdent} ${nameOf(row[end])}`}
            </Button>
          ))}
          <span className="aside">
            {[row.lengthFt === null ? '' : `${whole(row.lengthFt)} ft`, row.surface]
              .filter(Boolean)
              .join(', ')}
          </span>
        </li>
      ))}
    </ul>
  );
}

function nameOf({ ident }: RunwayEnd): string {
  return ident === '' ? 'unnamed' : ident;
}
