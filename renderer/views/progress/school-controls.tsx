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
            by {title.slice(0, 1).toLowerCase() + title.slice(1)}
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
          chosen={filter.mix[count.factor] ?? null}
          choose={(keys) => let_({ mix: { ...filter.mix, [count.factor]: keys } })}
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

/** One standard and one version of the engine at a time: there is nothing to choose where all have the same. */
function JudgedChoice({ school: { judgedBy, compared }, filter, change }: JudgedProps) {
  if (judgedBy.length < 2 && filter.standardKey === null) return null;
  const value = compared ? `${compared.standardKey} ${compared.engineVersion}` : '';
  const choose = (key: string) => {
    const [standardKey = null, engineVersion = null] = key.split(' ');
    change({ standardKey, engineVersion });
  };
  return (
    <Choice words="Judged by" value={value} choose={choose}>
      {judgedBy.map(({ standardKey, standardTitle, engineVersion, approaches }) => (
        <option key={`${standardKey} ${engineVersion}`} value={`${standardKey} ${engineVersion}`}>
          {standardTitle}, version {engineVersion} ({approaches})
        </option>
      ))}
    </Choice>
  );
}

interface MixProps {
  readonly count: MixCount;
  readonly chosen: readonly string[] | null;
  readonly choose: (keys: readonly string[] | null) => void;
}

/** All values of a factor, or one of them, each with how many there are. */
function MixChoice({ count: { title, values }, chosen, choose }: MixProps) {
  return (
    <Choice words={title} value={chosen?.[0] ?? ''} choose={(key) => choose(key === '' ? null : [key])}>
      <option value="">all</option>
      {values.map(({ key, label, approaches }) => (
        <option key={key} value={key}>
          {label} ({approaches})
        </option>
      ))}
    </Choice>
  );
}
