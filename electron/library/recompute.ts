import { defineFacility } from '../../core/analyze.ts';
import type { ApproachDebrief, Debrief } from '../../core/debrief/debrief.ts';
import { usable, type Outcome } from '../../core/issue/issue.ts';
import type { Job, LogSettings } from '../../core/log/log.ts';
import type { Standard } from '../../core/standard/standard.ts';
import { standardById } from '../../core/standard/standards.ts';
import { NOTHING_STATED, type Stated } from '../../core/standard/stated.ts';
import { debriefBytes, type DebriefLog } from './debrief-bytes.ts';
import { documentText, keepDocument, readDocument } from './documents.ts';
import { nothingToKeep, type ToKeep } from './to-keep.ts';
import { from, type Library } from './library.ts';

/** The debriefs that another version of the engine made, with what they were made of. */
export function otherEngines(library: Library, engineVersion: string) {
  return library.all(
    from
      .selectFrom('debriefs')
      .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
      .innerJoin('facilities', 'facilities.sha256', 'debriefs.facility_sha256')
      .selectAll('debriefs')
      .select(['logs.file_name', 'facilities.name', 'facilities.content'])
      .where('debriefs.engine_version', '!=', engineVersion)
      .orderBy('logs.start_utc'),
  );
}

type Other = ReturnType<typeof otherEngines>[number];

/**
 * Makes one of them anew, to be kept, and says what is another than before; what was signed stays beside it. `debrief`
 * may be a pool's.
 */
export async function recompute(
  library: Library,
  other: Other,
  job: Job,
  debrief: DebriefLog = debriefBytes,
): Promise<ToKeep<Outcome<readonly string[]>>> {
  const facility = defineFacility(other.content, other.name);
  if (!facility.ok) return nothingToKeep(facility);
  const bytes = library.logFiles.read(other.log_sha256, other.file_name);
  // A shipped standard is the present one's: an older file may lack what the engine reads of it now.
  const standard = standardById(other.standard_id) ?? (JSON.parse(other.standard) as Standard);
  const judging = {
    standard,
    // What could not be stated yet when it was kept was not stated.
    stated: { ...NOTHING_STATED, ...(JSON.parse(other.stated) as Partial<Stated>) },
    ...(other.heights && { heights: other.heights }),
    ...(other.antenna_height_ft !== null && { antennaHeightFt: other.antenna_height_ft }),
  };
  const settings = JSON.parse(other.settings) as LogSettings;
  const made = await debrief({ name: other.file_name, bytes }, [facility.value], { settings, judging }, job);
  if (!made.ok) return nothingToKeep(made);
  const document = made.value.documents[0]!;
  const after = JSON.parse(documentText(document.sha256, document.json_gz)) as Debrief;
  const changes = changesBetween(readDocument(library, other.id), after);
  const keep = () => {
    library.run(
      from
        .updateTable('debriefs')
        .set({ standard: JSON.stringify(standard) })
        .where('id', '=', other.id),
    );
    keepDocument(library, other.id, document);
    return usable(changes);
  };
  return { logs: [], keep };
}

/** What reads otherwise in a newer debrief of the same log, a line each; empty where nothing does. */
function changesBetween(before: Debrief, after: Debrief): string[] {
  const [was, is] = [before.approaches, after.approaches];
  const count = was.length === is.length ? [] : [`${was.length} approaches before, ${is.length} now`];
  const pairs = is.flatMap((now) => {
    const then = was.find((one) => overlap(one, now));
    return then ? changesOf(then, now) : [];
  });
  return [...count, ...pairs];
}

function overlap(a: ApproachDebrief, b: ApproachDebrief): boolean {
  return Date.parse(a.startUtc) < Date.parse(b.endUtc) && Date.parse(b.startUtc) < Date.parse(a.endUtc);
}

function changesOf(then: ApproachDebrief, now: ApproachDebrief): string[] {
  const verdicts = now.criteria.map((criterion): Compared => {
    const before = then.criteria.find(({ id }) => id === criterion.id)?.verdict ?? 'not there';
    return [criterion.title, before, criterion.verdict];
  });
  const compared: Compared[] = [
    ['outcome', then.outcome, now.outcome],
    ['level', then.grade?.level ?? 'none', now.grade?.level ?? 'none'],
    ['score', then.grade?.score ?? 'none', now.grade?.score ?? 'none'],
    ...verdicts,
  ];
  return compared
    .filter(([, a, b]) => a !== b)
    .map(([what, a, b]) => `approach ${now.index}, ${what}: ${a} before, ${b} now`);
}

type Compared = readonly [what: string, before: string | number, now: string | number];
