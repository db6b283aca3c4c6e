import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { facilitySchema } from '../../core/facility/facility-schema.ts';
import {
  copyOf,
  draftOf,
  nameIn,
  NEW_FACILITY,
  shownIn,
  valueAt,
  without,
  withTyped,
} from '../../renderer/state/facility-draft.ts';
import { FACILITY_FIELDS, type FacilityField } from '../../renderer/state/facility-fields.ts';
import { textOf } from '../../renderer/state/facility-typing.ts';

const named = (path: string) => FACILITY_FIELDS.find((field) => field.path.join('.') === path)!;
const typedInto = (text: string, ...typed: readonly (readonly [string, string])[]) =>
  typed.reduce((so, [path, words]) => withTyped(so, named(path), words), text);
const rootOf = (text: string) => {
  const draft = draftOf(text);
  if (!draft.ok) throw new Error(draft.why);
  return draft.root;
};
const SAMPLES = ['petrelholm-ils-07', 'choughfell-ils-32', 'whimbrelness-ils-13'].map((name) =>
  readFileSync(`samples/${name}.json`, 'utf8'),
);

/** Paths of all values in the schema's own description of itself. */
function leaves(schema: unknown, above: readonly string[] = []): string[] {
  const { innerType, shape } = (schema as { def: { innerType?: unknown; shape?: object } }).def;
  if (innerType) return leaves(innerType, above);
  if (!shape) return [above.join('.')];
  return Object.entries(shape).flatMap(([key, inner]) => leaves(inner, [...above, key]));
}

describe('the form', () => {
  it('has a field for every value of a facility file, once, each under words of its own', () => {
    const paths = FACILITY_FIELDS.map(({ path }) => path.join('.'));
    // Where values come from stands beside each, and is not typed.
    const all = leaves(facilitySchema()).filter((path) => !/^(format|origin)\b/.test(path));
    expect(all.length).toBeGreaterThan(30);
    expect(paths.toSorted()).toEqual(all.toSorted());
    expect(new Set(FACILITY_FIELDS.map(({ words }) => words)).size).toBe(paths.length);
  });

  it.each(SAMPLES)(
    'makes from nothing the very text of a sample, in whatever order it is typed',
    (sample) => {
      const root = rootOf(sample);
      const typed = FACILITY_FIELDS.map((field): [FacilityField, string] => [
        field,
        textOf(field, valueAt(root, field.path)),
      ]);
      for (const order of [typed, typed.toReversed()]) {
        const made = order.reduce((text, [field, words]) => withTyped(text, field, words), NEW_FACILITY);
        expect(made.trim()).toBe(sample.trim());
      }
    },
  );

  it('changes nothing of a text where nothing is changed', () => {
    const odd = '{ "name":"Duneholm",  "runway": {"designator":"07"} }';
    expect(typedInto(odd, ['name', 'Duneholm'], ['ident', ''], ['runway.designator', '07'])).toBe(odd);
    expect(without(odd, ['finalApproachFix'])).toBe(odd);
  });

  it('keeps keys that it does not know, at every depth and at their place', () => {
    const text = JSON.stringify({
      revised: { on: '2026-03-01', by: ['me', { and: null }] },
      name: 'Duneholm',
      runway: { surface: 'grass', threshold: { survey: 7, latDeg: 1 } },
    });
    const changed = typedInto(
      text,
      ['name', 'Duneholm ILS 07'],
      ['runway.threshold.latDeg', 'S31 12.5'],
      ['runway.threshold.lonDeg', 'W000 27.1'],
      ['glidepath.angleDeg', '3'],
    );
    expect(JSON.parse(changed)).toEqual({
      revised: { on: '2026-03-01', by: ['me', { and: null }] },
      name: 'Duneholm ILS 07',
      runway: {
        surface: 'grass',
        threshold: { survey: 7, latDeg: -31.20833333, lonDeg: -0.45166667 },
      },
      glidepath: { angleDeg: 3 },
    });
    expect(Object.keys(rootOf(changed))).toEqual(['revised', 'name', 'runway', 'glidepath']);
  });

  it('takes a fix out, whole or field by field, and leaves no empty group behind', () => {
    const [sample] = SAMPLES as [string];
    const expected = { ...rootOf(sample) } as Record<string, unknown>;
    delete expected['finalApproachFix'];
    expect(rootOf(without(sample, ['finalApproachFix']))).toEqual(expected);
    const cleared = typedInto(
      sample,
      ['finalApproachFix.name', ''],
      ['finalApproachFix.distanceNm', ''],
      ['finalApproachFix.altitudeFt', ' '],
      ['finalApproachFix.dmeNm', ''],
    );
    expect(rootOf(cleared)).toEqual(expected);
    const oneLess = rootOf(typedInto(sample, ['finalApproachFix.dmeNm', '']));
    expect(oneLess['finalApproachFix']).toEqual({ name: 'PETRU', distanceNm: 5, altitudeFt: 1700 });
  });

  it('loses nothing of what cannot be read yet: it stands in the text as it was typed', () => {
    const text = typedInto(NEW_FACILITY, ['runway.threshold.latDeg', 'S31 1']);
    const half = typedInto(text, ['runway.threshold.latDeg', 'S31 75.1']);
    expect(valueAt(rootOf(half), ['runway', 'threshold', 'latDeg'])).toBe('S31 75.1');
    expect(shownIn(rootOf(half), named('runway.threshold.latDeg'), null)).toBe('S31 75.1');
  });

  it('shows what was typed for as long as the text says the same', () => {
    const field = named('runway.threshold.latDeg');
    const text = withTyped(NEW_FACILITY, field, 'S31 12.5');
    expect(shownIn(rootOf(text), field, 'S31 12.5')).toBe('S31 12.5');
    expect(shownIn(rootOf(text), field, null)).toBe('-31.20833333');
    expect(shownIn(rootOf(withTyped(text, field, 'N31 12.5')), field, 'S31 12.5')).toBe('31.20833333');
    expect(shownIn(rootOf(NEW_FACILITY), field, 'S31 12.5')).toBe('');
  });
});

describe('a text that a form would harm', () => {
  it.each([
    ['{ "name": ', /^Line 1, column 11: /],
    ['[1]', /no group in braces/],
    ['{ "runway": 5 }', /^runway is no group in braces/],
    ['{ "runway": { "threshold": [] } }', /^runway\.threshold is no group/],
    ['{ "minimums": null }', /^minimums is no group/],
    ['{ "name": "a", "name": "b" }', /^name is given twice/],
  ])('%s is left to be mended as text', (text, why) => {
    const draft = draftOf(text);
    expect(draft.ok ? '' : draft.why).toMatch(why);
    expect(typedInto(text, ['name', 'other'], ['runway.designator', '07'])).toBe(text);
    expect(copyOf(text)).toBe(text);
  });
});

describe('a copy', () => {
  it('is named as one, and is else the same', () => {
    for (const sample of SAMPLES) {
      const copy = copyOf(sample);
      expect(nameIn(copy)).toBe(`${nameIn(sample)} (copy)`);
      expect({ ...rootOf(copy), name: 0 }).toEqual({ ...rootOf(sample), name: 0 });
    }
    expect(copyOf(NEW_FACILITY)).toBe(NEW_FACILITY);
    expect(nameIn('{"name": 5}')).toBe('');
  });
});
