import { defineFacility, type DefinedFacility } from '../../core/analyze.ts';
import type { Issue, Outcome } from '../../core/issue/issue.ts';
import { parseStandard } from '../../core/standard/parse-standard.ts';
import type { Standard } from '../../core/standard/standard.ts';
import { standardById } from '../../core/standard/standards.ts';
import { NOTHING_STATED } from '../../core/standard/stated.ts';
import type { Input, Output } from '../bridge/calls.ts';
import { Unusable } from '../bridge/gate.ts';
import type { Ruling } from '../library/assign-rules.ts';
import type { FirstDays } from '../library/first-days.ts';
import type { Library } from '../library/library.ts';
import type { LibraryHost, LibraryRoom } from './library-host.ts';

type ToKeep = Input<'keepInLibrary'>;

/** No need to tell how far it is with one log, nor to stop in the middle of it. */
const ONE_LOG = { progress: () => {}, cancelled: () => false };

/** Debriefs a log and keeps it, as the command does; what is wrong with the log itself is an answer, and no failure. */
export function keepInLibrary(host: LibraryHost, input: ToKeep): Promise<Output<'keepInLibrary'>> {
  const { heights, antennaHeightFt, stated, settings } = input.asked;
  const standardIn = standardOf(input.asked.standard);
  const said = {
    stated: { ...NOTHING_STATED, ...stated },
    ...(heights !== null && { heights }),
    ...(antennaHeightFt !== null && { antennaHeightFt }),
  };
  const facilities = facilitiesOf(input.facilities);
  const log = { name: input.name, bytes: Buffer.from(input.base64, 'base64') };
  return host.use(async (library, room) => {
    const judging = { ...said, standard: standardIn(library, room) };
    let ruling: Ruling | null = null;
    const rule = (days: FirstDays) => (ruling = ruled(library, room, input, days));
    const student = input.student.by === 'name' ? input.student.name : null;
    const asked = {
      facilities,
      student,
      date: input.date,
      settings,
      judging,
      isAnew: input.how === 'anew',
      // What is open is kept at its facility and by its standard, whatever it was kept by before.
      areFacilitiesNamed: input.how !== 'bring-in',
      isStandardNamed: input.how !== 'bring-in',
      ...(input.student.by === 'folder' && { rule }),
    };
    const toKeep = await room.importLog(library, log, asked, ONE_LOG, host.debriefers(room).debrief);
    const before = room.namesOf(library, 'student');
    const imported = room.keepNow(library, toKeep);
    if (!imported.ok) {
      return { became: 'refused', why: sentenceOf(imported.refusal) };
    }
    const kept = room.keptOf(library, room.sha256Of(log.bytes), facilities[0].facility, judging.standard.id);
    const isNew = kept.student !== null && !before.includes(kept.student);
    return {
      ...kept,
      became: imported.value.became,
      added: isNew ? kept.student : null,
      nobodyBecause: kept.student === null ? whyOf(ruling) : null,
      stays: imported.value.became === 'kept' && imported.value.stays !== null,
      warnings: room.worthAsking(imported.issues).map(sentenceOf),
    };
  });
}

/** Whose a log is by the folders that it lay in. */
function ruled(
  library: Library,
  room: LibraryRoom,
  { folders, chosenFolder = null, name, date, student }: ToKeep,
  days: FirstDays,
): Ruling {
  return room.ruleFor(
    { path: [...folders, name], chosenFolder, statedDate: date, column: null, ...days },
    {
      studentFrom: { by: 'folder' },
      bookings: null,
      // Now, and not before the debrief: another log may have brought somebody meanwhile.
      students: room.namesOf(library, 'student'),
      instructors: [],
      addsStudents: student.by === 'folder' && student.addsStudents,
    },
  );
}

function whyOf(ruling: Ruling | null): string | null {
  return ruling && ruling.why;
}

/** One that is kept is looked for in the library: what the page sends of it is not checked as a file is. */
function standardOf(asked: ToKeep['asked']['standard']): (library: Library, room: LibraryRoom) => Standard {
  if (asked.kind === 'kept')
    return (library, room) => {
      const kept = room.keptStandard(library, asked.text);
      if (kept === null) throw new Unusable(KEPT_BY_ANOTHER);
      return kept;
    };
  const standard = namedStandard(asked);
  return () => standard;
}

function namedStandard(asked: Exclude<ToKeep['asked']['standard'], { kind: 'kept' }>): Standard {
  if (asked.kind === 'own') return orRefused(parseStandard(asked.text, 'The standard'));
  const standard = standardById(asked.id);
  if (standard === null) throw new Unusable(`There is no standard "${asked.id}".`);
  return standard;
}

const KEPT_BY_ANOTHER =
  'The standard by which this was kept is not in the library any more: choose another for it first.';

function facilitiesOf(texts: readonly string[]): readonly [DefinedFacility, ...DefinedFacility[]] {
  const defined = texts.map((text) => orRefused(defineFacility(text, 'The facility')));
  return defined as [DefinedFacility, ...DefinedFacility[]];
}

function orRefused<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Unusable(sentenceOf(outcome.refusal));
}

function sentenceOf({ message, tip }: Issue): string {
  return [message, tip].filter((words) => words !== null).join(' ');
}
