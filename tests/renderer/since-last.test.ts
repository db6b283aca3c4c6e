import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { standardById } from '../../core/standard/standards.ts';
import { OwnFacilities } from '../../renderer/state/own-facilities.ts';
import { OwnStandards } from '../../renderer/state/own-standards.ts';
import { sinceLastOf, statementText } from '../../renderer/state/since-last.ts';
import { partsOfOwn } from './parts-of-own.ts';

const PETRELHOLM = readFileSync('samples/petrelholm-ils-07.json', 'utf8');
const BETTER = [{}] as unknown as ReturnType<typeof sinceLastOf>;

/** A log that is open, and kept as it is stated, at a facility and by a standard of the user's own. */
async function kept() {
  const parts = partsOfOwn();
  const { store } = parts;
  const [facilities, standards] = [new OwnFacilities(parts), new OwnStandards(parts)];
  const facilityId = (await facilities.add(PETRELHOLM))!;
  const standardId = (await standards.makeFrom(standardById('instrument-rating')!))!;
  store.dispatch({ do: 'opened', id: 'a', name: 'a.csv', standardId, isSample: false });
  store.dispatch({ do: 'change', id: 'a', change: { facilityId, sinceLast: BETTER } });
  const text = () => statementText(store.state(), store.state().flights[0]!);
  const as = { lessonId: 'l', student: 'Hazel Wren', date: '2026-05-10', statements: text() };
  store.dispatch({ do: 'change', id: 'a', change: { kept: as } });
  const ownText = store.state().standards[0]!.text;
  const isAsKept = () => {
    const [flight] = store.state().flights;
    // What was better than the time before is told of what is kept alone.
    expect(sinceLastOf(store.state(), flight!)).toEqual(text() === as.statements ? BETTER : []);
    return text() === as.statements;
  };
  return { store, facilities, facilityId, standards, standardId, ownText, isAsKept };
}

describe('what is open and kept', () => {
  it('is another than was kept once its standard was changed under the same id, and the same when changed back', async () => {
    const { standards, standardId, ownText, isAsKept } = await kept();
    expect(isAsKept()).toBe(true);
    await standards.keep(standardId, ownText.replace('0.75', '0.05'));
    expect(isAsKept()).toBe(false);
    await standards.keep(standardId, '{}');
    expect(isAsKept()).toBe(false);
    await standards.keep(standardId, ownText);
    expect(isAsKept()).toBe(true);
  });

  it('is another once its facility was changed under the same id, but not where that was only written otherwise', async () => {
    const { facilities, facilityId, isAsKept } = await kept();
    await facilities.keep(facilityId, JSON.stringify(JSON.parse(PETRELHOLM)));
    expect(isAsKept()).toBe(true);
    await facilities.keep(facilityId, PETRELHOLM.replace('"angleDeg": 3', '"angleDeg": 3.1'));
    expect(isAsKept()).toBe(false);
    await facilities.keep(facilityId, '{ half a');
    expect(isAsKept()).toBe(false);
  });

  it('is another where something else is stated', async () => {
    const { store, isAsKept } = await kept();
    store.dispatch({ do: 'change', id: 'a', change: { antennaHeightFt: 4 } });
    expect(isAsKept()).toBe(false);
  });
});
