import type { Notes } from '../../electron/bridge/calls.ts';
import type { Analyst } from './analyst.ts';
import type { FacilityText } from '../worker/protocol.ts';
import type { FacilityEntry, Sample } from './app-state.ts';
import { bytesOf, call } from './host.ts';
import { KEPT_MARK } from './kept-mark.ts';

const utf8 = new TextDecoder();

/** The user's own facilities and those of the samples, each with what its file says of itself. */
export async function loadFacilities(
  analyst: Analyst,
  samples: readonly Sample[],
  notes: Notes,
  kept: readonly FacilityText[] = [],
): Promise<FacilityEntry[]> {
  const files = [...new Set(samples.map(({ facility }) => facility))];
  const shipped = await Promise.all(
    files.map(async (id) => {
      const { base64 } = await call('readSample', { file: id });
      return { id, text: utf8.decode(bytesOf(base64)), isFixed: true, mark: 'sample' };
    }),
  );
  const own = notes.facilities.map((facility) => ({ ...facility, isFixed: false, mark: null }));
  const ofLibrary = kept.map((facility) => ({ ...facility, isFixed: true, mark: KEPT_MARK }));
  const all = [...own, ...shipped, ...ofLibrary];
  const done = await analyst.start('facilities', {
    facilities: all.map(({ id, text }) => ({ id, text })),
  }).done;
  const readings = done.kind === 'done' ? done.value : [];
  return all.map((facility) => ({
    ...facility,
    reading: readings.find(({ id }) => id === facility.id) ?? null,
  }));
}
