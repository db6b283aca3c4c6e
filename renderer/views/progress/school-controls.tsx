import { mixLabel } from '../../../core/progress/school/case-mix.ts';
import type { SchoolAsked, SchoolPage } from '../../../core/progress/school/school-page.ts';
import type { MixCount } from '../../../core/progress/school/school.ts';
import type { GroupBy, SchoolFilter } from '../../../core/progress/school/school-input.ts';
import { Choice } from '../fields.tsx';
import { DateBox } from '../library/flight-filters.tsx';

interface Props {
  readonly page: SchoolPage;
  readonly asked: SchoolAsked;
  readonly change: (part: Partial<SchoolAsked>) => void;
}

/** By what the school is looked at, what is let in, and which groups are held side by side. */
export function SchoolControls({ page: { school, measures }, asked, change }: Props) {
  const { filter } = asked;
  const let_ = (part: Partial<SchoolFilter>) => change({ filter: { ...filter, ...part } });
  // What is the same in all cannot be told apart, and needs no choice.
  const factors = school.caseMix.filter(({ factor, values }) => values.length > 1 || filter.mix[factor]);
  return (
    <div className="school-controls" role="search" aria-label="What is looked at">
      <Choice words="Looked at by" value={asked.measure} choose={(measure) => change({ measure })}>
        {measures.map(({ id, title }) => (
          <option key={id} value={id}>
            {title}
          </option>
        ))}
      </Choice>
      <Choice
        words="Groups side by side"
        value={asked.groupBy ?? ''}
        choose={(by) => change({ groupBy: by === '' ? null : (by as GroupBy) })}
      >
        <option value="">none</option>
        <option value="instructor">by instructor</option>
        {school.caseMix.map(({ factor, title }) => (
          <option key={factor} value={factor}>
            {byWords(title)}
          </option>
        ))}
      </Choice>
      <JudgedChoice school={school} filter={filter} change={let_} />
      <DateBox words="From" value={filter.from} say={(from) => let_({ from })} />
      <DateBox words="To" value={filter.to} say={(to) => let_({ to })} />
      {factors.map((count) => (
        <MixChoice
          key={count.factor}
          count={count}
          chosen={filter.mix[count.factor]?.[0] ?? null}
          choose={(key) => let_({ mix: { ...filter.mix, [count.factor]: key === null ? null : [key] } })}
        />
      ))}
    </div>
  );
}

interface JudgedProps {
  readonly school: SchoolPage['school'];
  readonly filter: SchoolFilter;
  readonly change: (part: Partial<SchoolFilter>) => void;
}

/**
 * One standard and one version of the engine at a time: there is nothing to choose where all have the same. What was
 * chosen stays to be seen where the days leave nothing of it, and can be given up.
 */
function JudgedChoice({ school: { judgedBy }, filter: { standardKey, engineVersion }, change }: JudgedProps) {
  if (judgedBy.length < 2 && standardKey === null) return null;
  const chosen = standardKey === null ? '' : `${standardKey} ${engineVersion}`;
  const offered = judgedBy.map((one) => ({ ...one, key: `${one.standardKey} ${one.engineVersion}` }));
  const isOffered = chosen === '' || offered.some(({ key }) => key === chosen);
  const choose = (value: string) => {
    const one = offered.find(({ key }) => key === value) ?? { standardKey: null, engineVersion: null };
    change({ standardKey: one.standardKey, engineVersion: one.engineVersion });
  };
  return (
    <Choice words="Judged by" value={chosen} choose={choose}>
      <option value="">the one with the most approaches</option>
      {offered.map(({ key, standardTitle, engineVersion: version, approaches }) => (
        <option key={key} value={key}>
          {standardTitle}, version {version} ({approaches})
        </option>
      ))}
      {isOffered ? null : <option value={chosen}>as chosen before, version {engineVersion} (0)</option>}
    </Choice>
  );
}

interface MixProps {
  readonly count: MixCount;
  readonly chosen: string | null;
  readonly choose: (key: string | null) => void;
}

/** All values of a factor, or one of them, each with how many there are; the chosen one also where there are none. */
function MixChoice({ count: { factor, title, values }, chosen, choose }: MixProps) {
  const isOffered = chosen === null || values.some(({ key }) => key === chosen);
  return (
    <Choice words={title} value={chosen ?? ''} choose={(key) => choose(key === '' ? null : key)}>
      <option value="">all</option>
      {values.map(({ key, label, approaches }) => (
        <option key={key} value={key}>
          {label} ({approaches})
        </option>
      ))}
      {isOffered ? null : <option value={chosen}>{mixLabel(factor, chosen)} (0)</option>}
    </Choice>
  );
}

/** "by aircraft"; "by hand or coupled" is so already. */
function byWords(title: string): string {
  const words = title.slice(0, 1).toLowerCase() + title.slice(1);
  return words.startsWith('by ') ? words : `by ${words}`;
}
