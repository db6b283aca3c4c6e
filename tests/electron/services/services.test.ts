import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { NO_NOTES } from '../../../electron/bridge/no-notes.ts';
import type { Recent } from '../../../electron/bridge/recent.ts';
import { GivenFiles } from '../../../electron/services/given-files.ts';
import { NotesFile } from '../../../electron/services/notes-file.ts';
import { Samples } from '../../../electron/services/samples.ts';
import { userFolder } from '../../../electron/services/user-folder.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-services-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const named = (name: string) => ({ ...NO_NOTES, recents: [{ name, sha256: 'a'.repeat(64) }] });

describe('notes', () => {
  it('are none at first, and what was kept afterwards, also in another run', () => {
    const notes = new NotesFile(join(folder, 'new'));
    expect(notes.read()).toEqual({ revision: 0, notes: NO_NOTES });
    expect(notes.save(0, named('a'))).toEqual({ saved: true, revision: 1 });
    expect(notes.read().notes).toEqual(named('a'));
    expect(new NotesFile(join(folder, 'new')).read().notes).toEqual(named('a'));
    expect(readdirSync(join(folder, 'new'))).toEqual(['notes.json']);
  });

  it('of the version before units could be said are read without loss, and kept with what they had', () => {
    const before = {
      ...named('a'),
      facilities: [{ id: 'f', text: '{}' }],
      mappings: { '0011223344556677': { Alt: 'altitudeIndicatedFt', Note: null } },
    };
    writeFileSync(join(folder, 'notes.json'), JSON.stringify(before));
    const notes = new NotesFile(folder);
    expect(notes.read().notes).toEqual(before);
    expect(readdirSync(folder)).toEqual(['notes.json']);
    const said = { ...notes.read().notes, units: { '0011223344556677': { Alt: 'm' } } };
    expect(notes.save(0, said)).toMatchObject({ saved: true });
    expect(new NotesFile(folder).read().notes).toEqual(said);
  });

  it('keep what was typed into a facility apart from the facility', () => {
    const typed = { ...NO_NOTES, facilities: [{ id: 'f', text: '{}' }], drafts: { f: '{ "name": ' } };
    new NotesFile(folder).save(0, typed);
    expect(new NotesFile(folder).read().notes).toEqual(typed);
  });

  it('are not kept over those of another window', () => {
    const notes = new NotesFile(folder);
    notes.save(0, named('a'));
    expect(notes.save(0, named('b'))).toMatchObject({ saved: false });
    expect(notes.read().notes).toEqual(named('a'));
  });

  it('that cannot be read are moved aside, never written over', () => {
    writeFileSync(join(folder, 'notes.json'), '{ "format": "half');
    const notes = new NotesFile(folder);
    expect(notes.read().notes).toEqual(NO_NOTES);
    notes.save(0, named('a'));
    expect(readFileSync(join(folder, 'notes.json.unreadable'), 'utf8')).toBe('{ "format": "half');
  });

  it('are not kept over those that another process has kept since', () => {
    const here = new NotesFile(folder);
    expect(here.read().revision).toBe(0);
    const there = new NotesFile(folder);
    expect(there.save(0, named('there'))).toMatchObject({ saved: true });
    expect(here.save(0, named('here'))).toMatchObject({ saved: false, isStale: true });
    expect(new NotesFile(folder).read().notes).toEqual(named('there'));
    // Fetched anew, they can be changed.
    const { revision, notes } = here.read();
    expect(notes).toEqual(named('there'));
    expect(here.save(revision, named('here'))).toMatchObject({ saved: true });
    expect(new NotesFile(folder).read().notes).toEqual(named('here'));
  });

  it.each(['none', 'no notes'])('stay known while the app runs when their file is %s any more', (file) => {
    const notes = new NotesFile(folder);
    notes.save(0, named('a'));
    if (file === 'none') rmSync(join(folder, 'notes.json'));
    else writeFileSync(join(folder, 'notes.json'), 'spoilt');
    expect(notes.read()).toEqual({ revision: 1, notes: named('a') });
    expect(notes.save(1, named('b'))).toMatchObject({ saved: true });
    expect(new NotesFile(folder).read().notes).toEqual(named('b'));
  });

  it('of the version that remembered names alone are read without loss', () => {
    const text = readFileSync('tests/electron/services/notes-of-names-alone.json', 'utf8');
    writeFileSync(join(folder, 'notes.json'), text);
    const { notes } = new NotesFile(folder).read();
    expect(notes).toEqual({ ...(JSON.parse(text) as object), standards: [] });
    expect(readdirSync(folder)).toEqual(['notes.json']);
    expect(notes.recents).toHaveLength(2);
  });

  it('keep everything that can be stated about a flight', () => {
    const recent: Recent = {
      name: 'a.csv',
      sha256: 'b'.repeat(64),
      openedUtc: '2026-11-26T14:05:00.000Z',
      settings: {
        columns: { Alt: 'altitudeIndicatedFt', Note: null, Time: 'timeOfDay' },
        units: { Alt: 'm' },
        altitudeKind: 'indicated',
        dateOrder: 'dmy',
        timeZone: '+02:00',
        startS: 1,
        altimeterSettingHpa: 1003.5,
        receiver: 'plain',
        temperatureC: -12,
      },
      facilityId: null,
      standardId: 'skill-test',
      stated: {
        conditions: 'imc',
        visualReferenceAtMinimums: 'not-seen',
        targetAirspeedKt: 90,
        interceptAirspeedKt: 110,
        vrefKt: 70,
        assignedAltitudeFt: 3000,
        wind: { fromTrueDeg: 250, speedKt: 18 },
        hood: true,
        flown: 'coupled',
        vectoredInsideFix: true,
        engineOut: true,
        turbulence: 'moderate',
        instructorFlew: [{ startS: 1, endS: 2 }],
        allowances: [{ criterion: 'glidepath-final', by: 0.25, reason: 'first lesson' }],
      },
      summary: 'Stable at 1,000 ft; landed.',
    };
    const all = { ...NO_NOTES, recents: [recent] };
    expect(new NotesFile(folder).save(0, all)).toMatchObject({ saved: true });
    expect(new NotesFile(folder).read().notes).toEqual(all);
  });

  it('that cannot be read a second time do not replace those moved aside first', () => {
    for (const text of ['first', 'second']) {
      writeFileSync(join(folder, 'notes.json'), text);
      new NotesFile(folder).read();
    }
    expect(readFileSync(join(folder, 'notes.json.unreadable'), 'utf8')).toBe('first');
    expect(readFileSync(join(folder, 'notes.json.unreadable-2'), 'utf8')).toBe('second');
  });

  it('from before there were standards of one’s own are read without loss', () => {
    const before = {
      format: 'halfdot-notes/1',
      facilities: [{ id: 'f', text: '{ "name": "mine" }' }],
      mappings: { 'a,b': { a: 'latDeg', b: null } },
      recents: [{ name: 'one.csv', sha256: 'ab'.repeat(32) }],
      settings: { dots: 5, standard: 'skill-test', theme: 'dark' },
    };
    writeFileSync(join(folder, 'notes.json'), JSON.stringify(before));
    const notes = new NotesFile(folder);
    expect(notes.read().notes).toEqual({ ...before, standards: [] });
    const standards = [{ id: 's', text: 'not even JSON' }];
    expect(notes.save(0, { ...notes.read().notes, standards })).toEqual({ saved: true, revision: 1 });
    expect(new NotesFile(folder).read().notes).toEqual({ ...before, standards });
    expect(readdirSync(folder)).toEqual(['notes.json']);
  });

  it('whose folder is none say so', () => {
    writeFileSync(join(folder, 'file'), '');
    expect(() => new NotesFile(join(folder, 'file', 'below')).save(0, NO_NOTES)).toThrow(
      /notes\.json cannot be read/,
    );
  });
});

describe('files that were handed over', () => {
  it('are read by their tokens, which tell nothing of their places', () => {
    const path = join(folder, 'log.csv');
    writeFileSync(path, 'a,b\n');
    const given = new GivenFiles();
    given.add([path]);
    const [file] = given.list();
    expect(file).toMatchObject({ name: 'log.csv', bytes: 4 });
    expect(JSON.stringify(given.list())).not.toContain(folder);
    expect(given.read(file!.token)).toEqual({
      name: 'log.csv',
      base64: Buffer.from('a,b\n').toString('base64'),
    });
    for (const token of [path, 'log.csv', '', '../log.csv'])
      expect(() => given.read(token)).toThrow('No such file');
  });

  it('that are gone say so', () => {
    const given = new GivenFiles();
    given.add([join(folder, 'gone.csv')]);
    expect(() => given.read(given.list()[0]!.token)).toThrow(/^gone\.csv cannot be read: there is no such/);
  });
});

describe('samples', () => {
  it('are those of the catalogue, with their facilities, and nothing else of the folder', () => {
    const samples = new Samples('samples');
    for (const { file, facility } of samples.list()) {
      expect(existsSync(join('samples', file))).toBe(true);
      expect(samples.read(facility).name).toBe(facility);
      // To compare them by expect takes seconds.
      expect(
        Buffer.from(samples.read(file).base64, 'base64').equals(readFileSync(join('samples', file))),
      ).toBe(true);
    }
    for (const file of ['README.md', 'catalogue.json', '../package.json', 'debriefs/phone.gpx.txt', ''])
      expect(() => samples.read(file)).toThrow('There is no such sample.');
  });
});

describe("the user's folder", () => {
  it.each([
    ['linux', {}, '/home/u/.config/halfdot'],
    ['linux', { XDG_CONFIG_HOME: '/x' }, '/x/halfdot'],
    ['darwin', {}, '/home/u/Library/Application Support/halfdot'],
    ['win32', { APPDATA: '/roaming' }, '/roaming/halfdot'],
    ['linux', { HALFDOT_USER_FOLDER: '/elsewhere' }, '/elsewhere'],
  ] as const)('on %s with %j is %s', (platform, env, path) => {
    expect(userFolder(env, platform, '/home/u')).toBe(path);
  });
});
