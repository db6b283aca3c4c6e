import { useState } from 'react';
import { Button } from 'react-aria-components';
import { valueAt, withConfirmedIn, without, withTyped } from '../../state/facility-draft.ts';
import type { Group } from '../../state/json-group.ts';
import { MORE_SECTIONS, NEEDED_SECTIONS, type FacilitySection } from '../../state/facility-fields.ts';
import { unconfirmedIn } from '../../state/facility-origin.ts';
import type { Remark } from '../../state/facility-remarks.ts';
import { FacilityBox } from './facility-box.tsx';

interface Props {
  readonly text: string;
  /** The same, read. */
  readonly root: Group;
  readonly remarks: readonly Remark[];
  readonly isFixed: boolean;
  readonly write: (text: string) => void;
}

/** A facility as fields: what is needed first, the rest of the chart below. Every change is one of its text. */
export function FacilityForm(props: Props) {
  const { root } = props;
  const isFilled = ({ fields }: FacilitySection) =>
    fields.some(({ path }) => valueAt(root, path) !== undefined);
  // As it is found: who opens or closes it later decides.
  const [opens] = useState(() => MORE_SECTIONS.some(isFilled));
  const open = unconfirmedIn(root).length;
  return (
    <form autoComplete="off" onSubmit={(event) => event.preventDefault()}>
      {open > 0 && !props.isFixed ? (
        <div className="notice">
          <p>
            <strong>A draft from a landing.</strong>{' '}
            {`${open === 1 ? '1 value is' : `${open} values are`} not confirmed: compare each with the current chart, and confirm or correct it.`}
          </p>
        </div>
      ) : null}
      {NEEDED_SECTIONS.map((section) => (
        <Section key={section.legend} section={section} {...props} />
      ))}
      <details open={opens}>
        <summary>The rest of the chart</summary>
        <p className="aside">What is left empty is not known, and a usual value stands in for it.</p>
        {MORE_SECTIONS.map((section) => (
          <Section key={section.legend} section={section} {...props} />
        ))}
      </details>
    </form>
  );
}

function Section({
  section,
  text,
  root,
  remarks,
  isFixed,
  write,
}: Props & { readonly section: FacilitySection }) {
  const { legend, note, path, fields } = section;
  const own = remarks.find(({ at }) => at === section);
  const canRemove = section.isRemovable && !isFixed && path !== null && valueAt(root, path) !== undefined;
  return (
    <fieldset>
      <legend>{legend}</legend>
      {note && !own ? <p className="aside">{note}</p> : null}
      {own ? <p className={own.kind === 'wrong' ? 'wrong' : 'aside'}>{own.sentence}</p> : null}
      <div className="boxes">
        {fields.map((field) => (
          <FacilityBox
            key={field.path.join('.')}
            field={field}
            root={root}
            remark={remarks.find(({ at }) => at === field) ?? null}
            isFixed={isFixed}
            type={(typed) => write(withTyped(text, field, typed))}
            confirm={() => write(withConfirmedIn(text, field.path))}
          />
        ))}
      </div>
      {canRemove ? (
        <Button className="small" onPress={() => write(without(text, path))}>
          {`Take the ${legend.toLowerCase()} out`}
        </Button>
      ) : null}
    </fieldset>
  );
}
