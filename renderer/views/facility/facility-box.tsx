import { useState } from 'react';
import { Button } from 'react-aria-components';
import { shownIn, valueAt } from '../../state/facility-draft.ts';
import type { Group } from '../../state/json-group.ts';
import type { FacilityField } from '../../state/facility-fields.ts';
import { isUnconfirmed, sourceOf } from '../../state/facility-origin.ts';
import { labelOf, type Remark } from '../../state/facility-remarks.ts';
import { readBack } from '../../state/facility-typing.ts';

interface Props {
  readonly field: FacilityField;
  readonly root: Group;
  readonly remark: Remark | null;
  readonly isFixed: boolean;
  readonly type: (typed: string) => void;
  /** Of a draft's value: it is what the chart says. */
  readonly confirm: () => void;
}

/** The name of a field's box in the page, so that it can be gone to from a list. */
export function boxId({ path }: FacilityField): string {
  return `facility.${path.join('.')}`;
}

/**
 * One field under its words: what it was taken for and what is wrong with it stand below. It changes the text with
 * every letter; a mistake is said only when the field is left, since half a position is one.
 */
export function FacilityBox({ field, root, remark, isFixed, type, confirm }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const [isTyping, setTyping] = useState(false);
  const id = boxId(field);
  const shown = shownIn(root, field, typed);
  const taken = readBack(field, valueAt(root, field.path), shown);
  const said = isTyping ? null : remark;
  const isWrong = said?.kind === 'wrong';
  const source = sourceOf(root, field.path);
  const parts = { taken, from: source, said: said?.sentence };
  const described = Object.entries(parts).flatMap(([part, words]) => (words ? [`${id}-${part}`] : []));
  const box = {
    id,
    value: shown,
    readOnly: isFixed,
    spellCheck: false,
    'aria-invalid': isWrong,
    'aria-required': field.isNeeded,
    'aria-describedby': described.length === 0 ? undefined : described.join(' '),
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
      <Said id={`${id}-taken`} words={taken} />
      <Said id={`${id}-from`} words={source} />
      {isUnconfirmed(root, field.path) && !isFixed ? (
        <Button className="link confirm" aria-label={`Confirm: ${field.words}`} onPress={confirm}>
          Confirm
        </Button>
      ) : null}
      <Said id={`${id}-said`} words={said?.sentence ?? null} isWrong={isWrong} />
    </div>
  );
}

interface SaidProps {
  readonly id: string;
  readonly words: string | null;
  readonly isWrong?: boolean;
}

function Said({ id, words, isWrong = false }: SaidProps) {
  if (!words) return null;
  return (
    <span id={id} className={isWrong ? 'wrong' : 'taken'}>
      {words}
    </span>
  );
}
