import { describe, expect, it } from 'vitest';
import { codes, issueOf, readRefused, readUsable } from './reading.ts';

const FT_PER_M = 1 / 0.3048;
const T0 = Date.UTC(2024, 4, 1, 10, 0, 0) / 1000;

function point(
  second: number,
  inside = '<ele>100</ele>',
  attributes = `lat="47.${second}" lon="8.5"`,
): string {
  return `<trkpt ${attributes}>${inside}<time>2024-05-01T10:00:0${second}Z</time></trkpt>`;
}

function gpx(...segments: string[]): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1">\n<trk>\n${segments.map((points) => `<trkseg>\n${points}\n</trkseg>\n`).join('')}</trk>\n</gpx>\n`;
}

describe('GPX', () => {
  it('1.0 with its own speed and course is read', async () => {
    const log = await readUsable(
      gpx(
        point(
          0,
          '<ele>100</ele><speed>51.4444444</speed><course>273.5</course><hdop>0.9</hdop><vdop>1.4</vdop><geoidheight>48.2</geoidheight><fix>3d</fix>',
        ),
      ),
    );
    expect([...log.timeS]).toEqual([T0]);
    expect(log.values.altitudeGeometricFt![0]).toBeCloseTo(100 * FT_PER_M, 9);
    expect(log.values.groundspeedKt![0]).toBeCloseTo(100, 6);
    expect(log.values.courseTrueDeg![0]).toBe(273.5);
    expect([log.values.hdop![0], log.values.vdop![0], log.values.geoidHeightM![0]]).toEqual([0.9, 1.4, 48.2]);
    expect([...log.line]).toEqual([5]);
  });

  it('1.1 extensions of any namespace are read by their local names', async () => {
    const inside =
      '<ele>100</ele><extensions><q:Ext><q:Speed>10</q:Speed><q:course>90</q:course><q:hAcc>3.5</q:hAcc><q:vacc>5</q:vacc><q:heart>70</q:heart></q:Ext></extensions>';
    const log = await readUsable(gpx(point(0, inside), point(1)));
    expect(log.values.groundspeedKt![0]).toBeCloseTo(10 * (3600 / 1852), 9);
    expect(log.values.groundspeedKt![1]).toBeNaN();
    expect([
      log.values.courseTrueDeg![0],
      log.values.horizontalAccuracyM![0],
      log.values.verticalAccuracyM![0],
    ]).toEqual([90, 3.5, 5]);
    expect(log.columns.map(({ index, header, role }) => [index, header, role])).toEqual([
      [0, 'lat', 'latDeg'],
      [1, 'lon', 'lonDeg'],
      [2, 'time', 'dateTime'],
      [3, 'ele', 'altitudeGeometricFt'],
      [4, 'speed', 'groundspeedKt'],
      [5, 'course', 'courseTrueDeg'],
      [6, 'hacc', 'horizontalAccuracyM'],
      [7, 'vacc', 'verticalAccuracyM'],
      [8, 'heart', null],
    ]);
  });

  it('of two elements for one quantity the first in a point counts', async () => {
    const log = await readUsable(
      gpx(
        point(0, '<ele>1</ele><course>10</course><bearing>20</bearing>') +
          point(1, '<ele>1</ele><bearing>30</bearing>'),
      ),
    );
    expect([...log.values.courseTrueDeg!]).toEqual([10, 30]);
  });

  it('a segment begins a new stretch; an empty one does not', async () => {
    const log = await readUsable(gpx('', point(0) + point(1), '', point(2), ''));
    expect([log.breaks, log.timeS.length]).toEqual([[2], 3]);
  });

  it('quantities that no point has are absent', async () => {
    const log = await readUsable(gpx(point(0)));
    expect(Object.keys(log.values).toSorted()).toEqual(['altitudeGeometricFt', 'latDeg', 'lonDeg']);
  });

  it('the kind of "ele" is an assumption, unless the user says it', async () => {
    const assumed = await readUsable(gpx(point(0)));
    const said = await readUsable(gpx(point(0)), { columns: { ele: 'altitudeEllipsoidFt' } });
    expect(issueOf(assumed, 'gpx-ele-assumed-msl')).toMatchObject({ severity: 'note', count: 1 });
    expect(said.values.altitudeEllipsoidFt![0]).toBeCloseTo(100 * FT_PER_M, 9);
    expect([said.values.altitudeGeometricFt, said.issues]).toEqual([undefined, []]);
    expect(said.columns[3]).toMatchObject({
      header: 'ele',
      role: 'altitudeEllipsoidFt',
      why: 'the user said so',
    });
  });

  it('the user may leave an element out', async () => {
    const log = await readUsable(gpx(point(0, '<ele>1</ele><speed>5</speed>')), { columns: { speed: null } });
    expect(log.values.groundspeedKt).toBeUndefined();
    expect(log.columns[4]).toMatchObject({ header: 'speed', role: null });
  });

  it('an element that every point leaves empty or unreadable is not used, and its column says so', async () => {
    const log = await readUsable(gpx(point(0, '<ele>1</ele><speed>fast</speed><course> </course>')));
    expect(Object.keys(log.values).toSorted()).toEqual(['altitudeGeometricFt', 'latDeg', 'lonDeg']);
    expect(log.columns[4]).toMatchObject({
      header: 'speed',
      role: null,
      why: 'no point holds a value of it',
    });
    expect(log.columns.length).toBe(5);
    expect(issueOf(log, 'value-unreadable')).toMatchObject({ count: 1, firstLine: 5 });
  });

  it('the user may map an element that nobody knows, in its own unit or the metric one', async () => {
    const inside = '<ele>1</ele><IAS>50</IAS><Alt2>100</Alt2><QNH>1013</QNH>';
    const columns = {
      ias: 'airspeedIndicatedKt',
      Alt2: 'altitudePressureFt',
      qnh: 'altimeterSettingHpa',
    } as const;
    const log = await readUsable(gpx(point(0, inside)), { columns, units: { QNH: 'hPa' } });
    expect(log.values.airspeedIndicatedKt![0]).toBeCloseTo((50 * 3600) / 1852, 9);
    expect(log.values.altitudePressureFt![0]).toBeCloseTo(100 * FT_PER_M, 9);
    expect([...log.values.altimeterSettingHpa!]).toEqual([1013]);
    expect(
      log.columns.slice(4).map(({ header, role, unitRead, why }) => [header, role, unitRead?.name, why]),
    ).toEqual([
      ['ias', 'airspeedIndicatedKt', 'm/s', 'the user said so'],
      ['alt2', 'altitudePressureFt', 'm', 'the user said so'],
      ['qnh', 'altimeterSettingHpa', 'hPa', 'the user said so, and that it is in hPa'],
    ]);
  });

  it("the user may say an element's unit; one that cannot be is refused", async () => {
    const text = gpx(point(0, '<ele>100</ele><speed>36</speed>'));
    const said = await readUsable(text, { units: { speed: 'km/h', ele: 'ft' } });
    expect(said.values.groundspeedKt![0]).toBeCloseTo(36 / 1.852, 9);
    expect(said.values.altitudeGeometricFt![0]).toBe(100);
    expect([said.columns[4]!.why, codes(said)]).toEqual([
      'the element of that name; the user said that it is in km/h',
      ['gpx-ele-assumed-msl'],
    ]);
    const wrong = await readRefused(text, { units: { speed: 'hPa' } });
    expect([wrong.code, wrong.message]).toEqual([
      'unit-unfit',
      'flight: column "speed" (groundspeed) cannot be in hPa, as was stated.',
    ]);
  });

  it('how each unit is known is told: by the format, by the user, or by nothing', async () => {
    const text = gpx(point(0, '<ele>100</ele><speed>36</speed><IAS>50</IAS><hdop>1</hdop>'));
    const log = await readUsable(text, { columns: { IAS: 'airspeedIndicatedKt' }, units: { Speed: 'kt' } });
    expect(log.columns.map(({ header, unitRead }) => [header, unitRead])).toEqual([
      ['lat', null],
      ['lon', null],
      ['time', null],
      ['ele', { name: 'm', from: 'usual' }],
      ['speed', { name: 'kt', from: 'user' }],
      ['ias', { name: 'm/s', from: 'assumed' }],
      ['hdop', null],
    ]);
  });

  it("a needle that the user maps becomes a fraction of full scale, in the user's unit or by its values", async () => {
    const text = gpx(
      point(0, '<ele>1</ele><needle>75</needle>') + point(1, '<ele>1</ele><needle>-2</needle>'),
    );
    const columns = { needle: 'localizerRecordedFullScale' } as const;
    const said = await readUsable(text, { columns, units: { needle: 'µA' } });
    expect(said.values.localizerRecordedFullScale![0]).toBe(0.5);
    expect(said.columns.at(-1)!.unitRead).toEqual({ name: 'µA', from: 'user' });
    const open = await readUsable(text.replace('75', '1'), { columns });
    expect([...open.values.localizerRecordedFullScale!]).toEqual([0.5, -1]);
    expect(open.columns.at(-1)!.unitRead).toEqual({ name: 'dots of 2', from: 'values' });
    expect(codes(await readUsable(text, { columns }))).toContain('needle-scale-unknown');
  });

  it('a unit stated for an attribute or an element that is not there changes nothing, and that is said', async () => {
    const log = await readUsable(gpx(point(0, '<ele>1</ele>')), { units: { lat: 'rad', gone: 'm' } });
    expect([...log.values.latDeg]).toEqual([47]);
    expect(codes(log)).toEqual(['gpx-ele-assumed-msl', 'unit-unused', 'unit-unused']);
  });

  it('a name that the user speaks of takes the place of the usual ones, the first of two stays', async () => {
    const text = gpx(point(0, '<ele>1</ele><course>10</course><bearing>20</bearing><way>30</way>'));
    const mapped = await readUsable(text, { columns: { way: 'courseTrueDeg', road: 'courseTrueDeg' } });
    const inUnit = await readUsable(text, { units: { bearing: 'deg' } });
    expect([[...mapped.values.courseTrueDeg!], [...inUnit.values.courseTrueDeg!]]).toEqual([[30], [20]]);
    expect(mapped.columns.map(({ header, role }) => [header, role]).slice(4)).toEqual([
      ['course', null],
      ['bearing', null],
      ['way', 'courseTrueDeg'],
    ]);
  });

  it('the position stays the attributes, whatever an element is mapped to', async () => {
    const log = await readUsable(gpx(point(0, '<ele>1</ele><y>9</y>')), {
      columns: { y: 'latDeg', t: 'epoch' },
    });
    expect([[...log.values.latDeg], [...log.timeS]]).toEqual([[47], [T0]]);
  });

  it('times with an offset become UTC; times without one are UTC by the schema', async () => {
    const times = ['2024-05-01T12:00:00+02:00', '2024-05-01T10:00:01', '2024-05-01T10:00:02.5Z'];
    const points = times
      .map((time) => `<trkpt lat="1" lon="2"><ele>3</ele><time>${time}</time></trkpt>`)
      .join('\n');
    const log = await readUsable(gpx(points), { timeZone: '+05:00' });
    expect([...log.timeS]).toEqual([T0, T0 + 1, T0 + 2.5]);
    expect([log.timeReference, log.utcOffsetS]).toEqual(['utc', 7200]);
  });

  it('points without time or position are left out and counted, with their lines', async () => {
    const points = [
      point(0),
      '<trkpt lat="47" lon="8"><ele>1</ele></trkpt>',
      point(1, '', 'lon="8"'),
      point(1, '', 'lat="95" lon="8"'),
      point(1, '<fix>none</fix>'),
      '<trkpt lat="47" lon="8"><time>2024-02-31T10:00:00Z</time></trkpt>',
      point(2),
    ];
    const log = await readUsable(gpx(points.join('\n')));
    expect([[...log.timeS], [...log.line], log.rowsSeen]).toEqual([[T0, T0 + 2], [5, 11], 7]);
    expect(issueOf(log, 'row-without-time')).toMatchObject({ count: 2, firstLine: 6 });
    expect(issueOf(log, 'row-without-position')).toMatchObject({ count: 3, firstLine: 7 });
  });

  it('the height of a two-dimensional fix is unknown', async () => {
    const log = await readUsable(
      gpx(point(0, '<ele>100</ele><fix>2d</fix>') + point(1) + point(2, '<fix>2d</fix>')),
    );
    expect(issueOf(log, 'height-of-2d-fix')).toMatchObject({ count: 1, firstLine: 5, severity: 'note' });
    expect(log.values.altitudeGeometricFt![0]).toBeNaN();
    expect(log.values.altitudeGeometricFt![1]).toBeCloseTo(100 * FT_PER_M, 9);
  });

  it('text in CDATA, entities and namespace prefixes make no difference', async () => {
    const log = await readUsable(
      '<g:gpx xmlns:g="x"><g:trk><g:trkpt lat="&#52;7" lon="8"><g:ele><![CDATA[100]]></g:ele><!-- c --><?pi x?><g:time>2024-05-01T10:00:0<!-- c -->0Z</g:time></g:trkpt></g:trk></g:gpx>',
    );
    expect([log.values.latDeg[0], log.timeS[0]]).toEqual([47, T0]);
    expect(log.values.altitudeGeometricFt![0]).toBeCloseTo(100 * FT_PER_M, 9);
  });

  it('an unreadable or impossible value is unknown and counted', async () => {
    const log = await readUsable(
      gpx(point(0, '<ele>high</ele><speed>-1</speed>') + point(1, '<ele>1</ele><speed>0</speed>')),
    );
    expect(log.values.altitudeGeometricFt![0]).toBeNaN();
    expect([...log.values.groundspeedKt!]).toEqual([NaN, 0]);
    expect(codes(log)).toEqual(['value-unreadable', 'value-marked-invalid', 'gpx-ele-assumed-msl']);
  });

  it('longitudes from 0 to 360 are wrapped', async () => {
    const log = await readUsable(gpx(point(0, '<ele>1</ele>', 'lat="1" lon="359"')));
    expect(log.values.lonDeg[0]).toBe(-1);
    expect(issueOf(log, 'longitude-wrapped')).toMatchObject({ count: 1, firstLine: 5 });
  });
});

describe('GPX that is damaged', () => {
  it('the fixes before the first error are kept, and the place is said', async () => {
    const text = gpx(`${point(0)}\n${point(1)}\n</wrong>${point(2)}`);
    const log = await readUsable(text);
    expect([...log.timeS]).toEqual([T0, T0 + 1]);
    expect(issueOf(log, 'xml-not-well-formed')).toMatchObject({ severity: 'warning', firstLine: 7 });
    expect(issueOf(log, 'xml-not-well-formed')!.message).toMatch(
      /^flight is damaged at line 7, column 8 \(unexpected close tag\.\): only the 2 fixes before it are used\.$/,
    );
  });

  it('a file that ends in the middle keeps what is complete', async () => {
    const text = gpx(`${point(0)}\n${point(1)}`);
    const log = await readUsable(text.slice(0, text.indexOf('10:00:01')));
    expect([...log.timeS]).toEqual([T0]);
    expect(issueOf(log, 'xml-not-well-formed')).toMatchObject({ firstLine: 6 });
  });

  it('an error before the first fix leaves nothing to use', async () => {
    expect(await readRefused('<gpx>\n<trk></gpx>')).toMatchObject({
      code: 'xml-damaged-at-start',
      firstLine: 2,
    });
  });
});

describe('GPX that is refused', () => {
  const bomb = `<!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa">${Array.from({ length: 9 }, (_, i) => `<!ENTITY ${'bcdefghij'[i]} "${`&${'abcdefghi'[i]};`.repeat(10)}">`).join('')}]>`;

  it('an entity bomb in an otherwise good file', async () => {
    const text = gpx(point(0, '<ele>1</ele><name>&j;</name>')).replace('<gpx', `${bomb}<gpx`);
    expect(await readRefused(text)).toMatchObject({ code: 'xml-doctype', firstLine: 2 });
  });

  it('any document type', async () => {
    expect(await readRefused(gpx(point(0)).replace('<gpx', '<!DOCTYPE gpx>\n<gpx'))).toMatchObject({
      code: 'xml-doctype',
    });
  });

  it('300,000 levels of nesting, without overflow', async () => {
    const deep = await readRefused(gpx('<a>'.repeat(300_000) + '</a>'.repeat(300_000)));
    expect(deep).toMatchObject({ code: 'xml-too-deep', firstLine: 5 });
  });

  it('32 levels are read, 33 are not', async () => {
    const nested = (levels: number) => gpx(point(0) + '<a>'.repeat(levels) + '</a>'.repeat(levels));
    expect((await readUsable(nested(29))).timeS.length).toBe(1);
    expect(await readRefused(nested(30))).toMatchObject({ code: 'xml-too-deep' });
  });

  it.each([
    ['text', (long: string) => gpx(point(0, `<ele>1</ele><name>${long}</name>`))],
    ['an attribute', (long: string) => gpx(point(0, `<ele>1</ele><name a="${long}"/>`))],
    ['a comment', (long: string) => gpx(point(0, `<ele>1</ele><!--${long}-->`))],
    ['CDATA', (long: string) => gpx(point(0, `<ele>1</ele><name><![CDATA[${long}]]></name>`))],
    ['a processing instruction', (long: string) => gpx(point(0, `<ele>1</ele><?pi ${long}?>`))],
  ])('%s over 64 kB, and not one of just 64 kB', async (_, text) => {
    expect((await readUsable(text('x'.repeat(65_536)))).timeS.length).toBe(1);
    expect(await readRefused(text('x'.repeat(65_537)))).toMatchObject({
      code: 'xml-text-too-long',
      firstLine: 5,
    });
    expect(await readRefused(text('x'.repeat(3_000_000)), {}, 100_000)).toMatchObject({
      code: 'xml-text-too-long',
      firstLine: 5,
    });
  });

  it('a name that never ends', async () => {
    expect(await readRefused(`<gpx><${'a'.repeat(2_000_000)}`)).toMatchObject({
      code: 'xml-text-too-long',
      firstLine: 1,
    });
  });

  it('XML of another kind, by the name of its outermost element', async () => {
    const refusal = await readRefused('<?xml version="1.0"?><kml><Placemark/></kml>');
    expect(refusal).toMatchObject({ code: 'not-a-track-log' });
    expect(refusal.message).toContain('"kml"');
  });

  it('a file of routes and waypoints only', async () => {
    const refusal = await readRefused(
      '<gpx><wpt lat="1" lon="2"/><rte><rtept lat="1" lon="2"/><rtept lat="1" lon="2"/></rte></gpx>',
    );
    expect(refusal).toMatchObject({
      code: 'no-rows',
      message: 'flight holds only 3 points of routes or waypoints: a route is not a flown track.',
    });
  });

  it('a file without points', async () => {
    expect(await readRefused('<gpx></gpx>')).toMatchObject({ code: 'no-rows' });
  });

  it('a track whose every point lacks its time', async () => {
    const refusal = await readRefused(
      '<gpx><trk><trkseg>\n<trkpt lat="1" lon="2"><ele>1</ele></trkpt></trkseg></trk></gpx>',
    );
    expect(refusal).toMatchObject({ code: 'no-usable-rows', firstLine: 2 });
    expect(refusal.message).toBe(
      'flight: none of the 1 track points can be used. 1 row without a usable time left out.',
    );
  });

  it('a track without altitudes', async () => {
    expect(await readRefused(gpx(point(0, '')))).toMatchObject({ code: 'no-altitude' });
  });
});
