import { useState } from 'react';
import { shownIn, valueAt, type Group } from '../../state/facility-draft.ts';
import type { FacilityField } from '../../state/facility-fields.ts';
import { labelOf, type Remark } from '../../state/facility-remarks.ts';
import { readBack } from '../../state/facility-typing.ts';

interface Props {
  readonly field: FacilityField;
  readonly root: Group;
  readonly remark: Remark | null;
  readonly isFixed: boolean;
  readonly type: (typed: string) => void;
}

/** The name of a field's box in the page, so that it can be gone to from a list. */
export function boxId({ path }: FacilityField): string {
  return `facility.${path.join('.')}`;
}

/**
 * One field under its words: what it was taken for and what is wrong with it stand below. It changes the text with
 * every letter; a mistake is said only when the field is left, since half a position is one.
 */
export function FacilityBox({ field, root, remark, isFixed, type }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const [isTyping, setTyping] = useState(false);
  const id = boxId(field);
  const shown = shownIn(root, field, typed);
  const taken = readBack(field, valueAt(root, field.path), shown);
  const said = isTyping ? null : remark;
  const isWrong = said?.kind === 'wrong';
  const described = [...(taken ? [`${id}-taken`] : []), ...(said ? [`${id}-said`] : [])].join(' ');
  const box = {
    id,
    value: shown,
    readOnly: isFixed,
    spellCheck: false,
    'aria-invalid': isWrong,
    'aria-required': field.isNeeded,
    'aria-describedby': described === '' ? undefined : described,
    onBlur: () => setTyping(false),
    onChange: ({ target }: { readonly target: { readonly value: string } }) => {
      setTyping(true);
      setTyped(target.value);
      type(target.value);
    },
  };
  return (
    <div className="field" data-kind={field.kind}>
      <label htmlFor={id}>{labelOf(field)}</label>
      {field.kind === 'lines' ? (
        <textarea rows={3} {...box} />
      ) : (
        <input {...box} onKeyDown={({ key }) => key === 'Enter' && setTyping(false)} />
      )}
      {taken ? (
        <span id={`${id}-taken`} className="taken">
          {taken}
        </span>
      ) : null}
      {said ? (
        <span id={`${id}-said`} className={isWrong ? 'wrong' : 'taken'}>
          {said.sentence}
        </span>
      ) : null}
    </div>
  );
}
