import type { ColumnRole } from './log.ts';

/**
 * The words of the trade in headers, in English, German, French and Spanish, and nothing but data: a new word is
 * one more word in a line here, a new meaning one more line.
 *
 * Words are written as `wordsOf` leaves them: lower case, no accents, no signs. Left stands what a word means in
 * the terms of `COLUMN_MEANINGS` (several terms for a compound, none for a word that says nothing), right its
 * spellings. Common usage, no source.
 */
const WORDS: readonly (readonly [string, string])[] = [
  // Words that say nothing about which quantity it is.
  [
    '',
    'the of in at a an on for current curr actual act own ownship aircraft acft value val data raw reading measured',
  ],
  [
    '',
    'de del du des der die das den el la le les l d en au aux sobre sur uber ueber dessus por segun nach vom von',
  ],
  [
    '',
    'sensor system logging logger log fix txt primary filtered smoothed fused ahrs ahars adahrs adc efis pfd avionics above over level niveau nivel mean medio moyen mittlere',
  ],
  [
    '',
    'position pos posn coord coordinate coordinates location geo geogr geografische geographische geographique geografica dec decimal decimales',
  ],
  // Place.
  ['latitude', 'lat latitude latitud breite breitengrad breit lati'],
  ['longitude', 'lon lng long longitude longitud lange laenge langengrad laengengrad longi'],
  // Heights.
  [
    'altitude',
    'alt alti altitude height hgt hohe hoehe flughohe flughoehe altitud altura hauteur elevation elev ele elevacion',
  ],
  ['msl', 'msl amsl asl sea nn nhn nmm mer mar meer meeres meeresspiegel orthometric'],
  ['gnss', 'gps gnss sbas'],
  ['geometric', 'geometric geometrisch geometrique geometrica geom'],
  [
    'ellipsoid',
    'ellipsoid ellipsoidal ellipsoidisch ellipsoide hae wgs wgs84 ellipsoidische elipsoidal elipsoide ellipsoidale',
  ],
  ['baro', 'baro barometric barometrisch barometrische barometrique barometrica barometrico'],
  [
    'indicated',
    'indicated ind indic angezeigt angezeigte indique indiquee indicada indicado displayed corrected korrigiert qnhcorrected',
  ],
  ['pressure', 'pressure press druck pression presion prs'],
  ['qne', 'qne std standard 1013 29 92'],
  ['transponder', 'transponder xpdr xponder modec squawkalt xpndr transpondeur transpondedor'],
  ['cabin', 'cabin kabine kabinen cabine cabina'],
  ['cabin altitude', 'kabinenhohe kabinenhoehe'],
  ['density', 'density dichte densite densidad dens'],
  ['geoid', 'geoid geoidal geoide undulation ondulation ondulacion'],
  ['geoid altitude', 'geoidheight geoidsep geoidhohe'],
  ['gnss altitude', 'gpsalt gpsaltitude altgps altitudegps gpshohe gpsheight gnssalt gpsele'],
  ['msl altitude', 'altmsl mslalt altitudemsl'],
  ['pressure altitude', 'pressurealtitude pressalt palt druckhohe pressalt altpress pressurealt'],
  ['density altitude', 'densityaltitude dalt dichtehohe densalt'],
  ['baro altitude', 'baroalt baroaltitude altbaro baroalt altb'],
  ['indicated altitude', 'altind indalt'],
  ['ground altitude', 'agl altagl aglalt aal'],
  ['radar altitude', 'ralt radalt radaralt radioaltimeter'],
  ['radar', 'radar radio radiosonde radiosondique lidar laser'],
  // Speeds.
  ['speed', 'speed spd geschwindigkeit geschw vitesse velocidad velocity vel fahrt'],
  ['ground', 'ground gnd grnd grund boden sol suelo terreno tierra og'],
  [
    'ground speed',
    'groundspeed gndspd gndspeed grndspd gspd gspeed sog gpsspeed vgnd vg speedgps bodengeschwindigkeit grundgeschwindigkeit speedoverground',
  ],
  ['gs', 'gs'],
  ['airspeed', 'airspeed aspd arspd fahrtmesser fluggeschwindigkeit anemometrica anemometrique'],
  ['indicated airspeed', 'ias kias vi calibrated cas kcas'],
  ['true airspeed', 'tas ktas'],
  ['true', 'true tru wahr wahre vrai vraie verdadera verdadero rechtweisend rechtweisender rw'],
  ['air', 'air luft aire propre'],
  ['vertical', 'vertical vert vertikal vertikale verticale'],
  [
    'vertical speed',
    'vs vsi vspd vspeed vvi roc rocd climbrate vario variometer steigrate sinkrate vertspd vertspeed verticalspeed vertikalgeschwindigkeit variometre variometro vz',
  ],
  ['climb', 'climb steig steigen montee ascenso sink'],
  ['rate', 'rate tasa taux regimen'],
  // Directions.
  [
    'track',
    'track trk cog kurs derrota route trayectoria trayecto groundtrack gtrk bearing brg course cours ruta',
  ],
  ['heading', 'heading hdg hdng head steuerkurs cap rumbo'],
  ['magnetic', 'magnetic mag magnetisch magnetique magnetico magnetica missweisend missweisender mw magn'],
  ['heading magnetic', 'maghdg magheading hdgmag'],
  ['track magnetic', 'magtrk trkmag magtrack'],
  ['track true', 'trktrue truetrk truetrack'],
  ['heading true', 'truehdg hdgtrue trueheading'],
  ['pitch', 'pitch langsneigung nickwinkel nick tangage assiette cabeceo'],
  [
    'bank',
    'bank roll querneigung rollwinkel hangewinkel roulis inclinaison alabeo inclinacion bankangle rollangle',
  ],
  ['angle', 'angle winkel angulo'],
  ['attitude', 'attitude att lage'],
  // Atmosphere, engine, configuration.
  ['altimeter setting', 'qnh kollsman altimetersetting altset barosetting calage'],
  ['altimeter', 'altimeter altimetre altimetro hohenmesser'],
  ['setting', 'setting set einstellung reglage ajuste'],
  ['outside temperature', 'oat aussentemperatur outsidetemp'],
  ['temperature', 'temperature temp temperatur temperatura'],
  ['outside', 'outside aussen aussenluft exterieure exterior ambient ext external static'],
  ['power', 'power pwr leistung puissance potencia'],
  ['engine', 'engine eng motor moteur e'],
  ['rpm', 'rpm drehzahl regime revoluciones revs'],
  ['manifold', 'manifold ladedruck admission admision'],
  ['manifold pressure', 'map manpress mapress manifoldpressure'],
  ['percent', 'percent pct prozent'],
  ['flaps', 'flap flaps klappen landeklappen volets volet flapdeg wingflaps'],
  ['gear', 'gear fahrwerk train landinggear tren lg ldggear'],
  ['landing', 'landing ldg atterrissage aterrizaje'],
  ['down', 'down dn locked ausgefahren'],
  // How sure the receiver is.
  ['accuracy', 'accuracy acc genauigkeit precision exactitude exactitud uncertainty'],
  ['horizontal', 'horizontal horiz hor horizontale h'],
  ['horizontal accuracy', 'hacc eph hfom epe horizontalaccuracy haccuracy'],
  ['vertical accuracy', 'vacc epv vfom verticalaccuracy vaccuracy'],
  ['horizontal protection', 'hpl hplwas hplsbas'],
  ['vertical protection', 'vpl vplwas vplsbas'],
  ['protection', 'protection'],
  ['hdop', 'hdop'],
  ['vdop', 'vdop'],
  // Needles.
  ['localizer', 'localizer localiser loc landekurs llz radiophare alignement localizador'],
  ['glidepath', 'glidepath glideslope gleitpfad glideslopes gp senda planeo descente glide slope'],
  ['deviation', 'deviation dev deflection defl needle ablage abweichung ecart desviacion nadel aiguille'],
  ['lateral', 'lateral laterale seitlich seitliche'],
  ['cdi', 'cdi'],
  ['localizer deviation', 'hcdi landekursablage locdev hdev hdi localizerdev'],
  ['glidepath deviation', 'vcdi gleitpfadablage gsdev gpdev vdev vdi gdi glideslopedev'],
  // Known, and left alone.
  ['wind', 'wind wnd vent viento windgeschwindigkeit windspeed windrichtung winddir wndspd wnddr'],
  ['selected', 'selected sel preselected target tgt bug crs seleccionada gewahlt gewahlte cible objetivo'],
  ['fuel', 'fuel fqty fflow kraftstoff carburant combustible'],
  ['egt', 'egt cht tit'],
  ['distance', 'distance dist xtk entfernung distancia abstand dme'],
  // Time.
  ['time', 'time zeit uhrzeit heure hora temps tiempo tod clock uhr timeofday'],
  ['date', 'date datum fecha jour tag dia'],
  ['timestamp', 'timestamp zeitstempel horodatage horodate datetime dateandtime timestamps marca ts isotime'],
  ['utc', 'utc gmt zulu z tu universal universelle weltzeit'],
  ['utc time', 'utctime gpstime timeutc'],
  ['utc date', 'utcdate gpsdate'],
  ['local', 'local lcl lokal lokale ortszeit locale lt'],
  ['local time', 'localtime lcltime'],
  ['local date', 'localdate lcldate'],
  ['utc offset', 'utcofst utcoffset utcoff gmtoffset tzoffset timezone'],
  ['offset', 'offset ofst versatz decalage desfase zone tz zeitzone'],
  ['epoch', 'epoch unix posix epochtime unixtime unixtimestamp'],
  [
    'elapsed',
    'elapsed since start boot seconds secs sekunden secondes segundos duration laufzeit vergangen vergangene ecoule ecoulee transcurrido uptime relative',
  ],
];

export const SYNONYMS: ReadonlyMap<string, readonly string[]> = new Map(
  WORDS.flatMap(([terms, spellings]) =>
    spellings.split(' ').map((word) => [word, terms === '' ? [] : terms.split(' ')] as const),
  ),
);

/** Terms that may stand beside any meaning without changing it. */
export const BESIDE: ReadonlySet<string> = new Set(['gnss', 'angle']);

/** `time` is any part of the time: the values say which. */
export type Meaning = ColumnRole | 'time' | null;

/**
 * What terms mean together, in any order and however often. Every term of a header must be explained: "wind speed"
 * is no groundspeed, since nothing explains the wind. Where terms stand twice, the named unit decides, then the
 * earlier line. The figure says how sure the words alone make it (our own judgement); 0: only with a unit that fits.
 */
export const COLUMN_MEANINGS: readonly (readonly [Meaning, number, ...string[]])[] = [
  [null, 0, 'density altitude', 'pressure density altitude', 'ground altitude', 'radar altitude'],
  ['latDeg', 0.95, 'latitude', 'latitude ellipsoid'],
  ['lonDeg', 0.95, 'longitude', 'longitude ellipsoid'],
  ['altitudeCabinFt', 0.95, 'cabin altitude', 'cabin pressure altitude'],
  ['altitudeTransponderFt', 0.95, 'transponder altitude', 'transponder pressure altitude', 'mode c altitude'],
  [
    'geoidHeightM',
    0.95,
    'geoid altitude',
    'geoid',
    'geoid separation',
    'geoid ellipsoid altitude',
    'geoid offset',
  ],
  ['altitudeEllipsoidFt', 0.95, 'ellipsoid altitude', 'geometric ellipsoid altitude', 'ellipsoid'],
  [
    'altitudePressureFt',
    0.95,
    'pressure altitude',
    'qne altitude',
    'pressure qne altitude',
    'baro pressure altitude',
  ],
  [
    'altitudeIndicatedFt',
    0.95,
    'indicated altitude',
    'indicated baro altitude',
    'altimeter setting altitude',
  ],
  [
    'altitudeIndicatedFt',
    0.95,
    'indicated msl altitude',
    'altimeter altitude',
    'altimeter indicated altitude',
  ],
  ['altitudeIndicatedFt', 0.85, 'baro altitude', 'baro msl altitude', 'altitude b', 'altitude b baro'],
  ['altitudeGeometricFt', 0.95, 'msl altitude', 'gnss altitude', 'geometric altitude', 'gnss msl altitude'],
  ['altitudeGeometricFt', 0.95, 'geometric msl altitude', 'msl'],
  ['altitudeUnnamedFt', 0.6, 'altitude', 'true altitude'],
  ['groundspeedKt', 0.95, 'ground speed', 'gnss speed'],
  ['groundspeedKt', 0.9, 'gs', 'gs speed'],
  ['groundspeedKt', 0.6, 'speed', 'g s'],
  ['airspeedTrueKt', 0.95, 'true airspeed', 'true air speed', 'true airspeed speed'],
  ['airspeedIndicatedKt', 0.95, 'indicated airspeed', 'indicated air speed', 'indicated speed'],
  ['airspeedIndicatedKt', 0.6, 'airspeed', 'air speed', 'airspeed speed'],
  [
    'verticalSpeedFpm',
    0.95,
    'vertical speed',
    'vertical speed indicated',
    'vertical speed baro',
    'vertical speed g',
  ],
  [
    'verticalSpeedFpm',
    0.9,
    'climb rate',
    'climb',
    'climb speed',
    'vertical rate',
    'v speed',
    'v s',
    'climb descent rate',
  ],
  ['courseTrueDeg', 0.95, 'track true', 'ground track true'],
  ['courseMagneticDeg', 0.95, 'track magnetic', 'ground track magnetic', 'track m'],
  ['courseTrueDeg', 0.7, 'track', 'ground track', 'track t', 'gnss heading'],
  ['headingTrueDeg', 0.95, 'heading true', 'heading t'],
  ['headingMagneticDeg', 0.95, 'heading magnetic', 'heading m'],
  ['headingMagneticDeg', 0.7, 'heading'],
  ['pitchDeg', 0.95, 'pitch', 'pitch attitude'],
  ['bankDeg', 0.95, 'bank', 'bank attitude'],
  [
    'altimeterSettingHpa',
    0.95,
    'altimeter setting',
    'altimeter setting pressure',
    'baro setting',
    'pressure setting',
  ],
  ['altimeterSettingHpa', 0.95, 'altimeter setting baro', 'baro pressure setting'],
  ['altimeterSettingHpa', 0.7, 'baro', 'altimeter'],
  ['altitudeIndicatedFt', 0.6, 'baro', 'altimeter'],
  ['outsideTemperatureC', 0.95, 'outside temperature', 'outside air temperature', 'air temperature'],
  ['powerPercent', 0.9, 'power', 'engine power', 'power percent', 'engine power percent'],
  ['engineRpm', 0.9, 'rpm', 'engine rpm', 'engine speed'],
  ['manifoldPressureInHg', 0.9, 'manifold pressure', 'engine manifold pressure', 'manifold'],
  ['flapDeg', 0.9, 'flaps', 'flaps setting'],
  ['gearDown', 0.9, 'gear', 'landing gear', 'gear down', 'landing gear down'],
  ['horizontalAccuracyM', 0.95, 'horizontal accuracy'],
  ['horizontalAccuracyM', 0.7, 'accuracy'],
  ['verticalAccuracyM', 0.95, 'vertical accuracy', 'altitude accuracy'],
  ['horizontalProtectionM', 0.95, 'horizontal protection'],
  ['verticalProtectionM', 0.95, 'vertical protection'],
  ['hdop', 0.95, 'hdop'],
  ['vdop', 0.95, 'vdop'],
  ['localizerRecordedFullScale', 0.95, 'localizer deviation', 'localizer cdi', 'localizer lateral deviation'],
  [
    'localizerRecordedFullScale',
    0.8,
    'lateral deviation',
    'horizontal deviation',
    'cdi',
    'cdi deviation',
    'lateral cdi',
  ],
  ['glidepathRecordedFullScale', 0.95, 'glidepath deviation', 'gs deviation', 'g s deviation'],
  ['glidepathRecordedFullScale', 0.95, 'glidepath vertical deviation', 'gs vertical deviation'],
  ['glidepathRecordedFullScale', 0.8, 'vertical deviation', 'vertical cdi'],
  ['localizerRecordedFullScale', 0, 'localizer'],
  ['glidepathRecordedFullScale', 0, 'glidepath', 'gs', 'g s'],
  ['utcOffset', 0.95, 'utc offset', 'time offset', 'offset', 'utc time offset', 'local offset'],
  ['elapsed', 0.9, 'elapsed', 'elapsed time', 'elapsed timestamp'],
  [
    'epoch',
    0.95,
    'epoch',
    'epoch time',
    'epoch timestamp',
    'epoch utc',
    'epoch utc time',
    'epoch utc timestamp',
  ],
  ['time', 0.95, 'utc time', 'utc timestamp', 'utc date', 'utc date time', 'utc', 'utc date timestamp'],
  ['time', 0.85, 'time', 'date', 'timestamp', 'date time', 'timestamp time'],
  ['time', 0.75, 'local time', 'local date', 'local timestamp', 'local date time'],
];

/** Terms that a column is known by but that no quantity here explains, and what such a column is. */
export const NOT_USED: ReadonlyMap<string, string> = new Map([
  ['wind', 'a value of the wind, not of the aircraft'],
  ['density', 'density altitude is computed for performance; it is no height that was flown'],
  ['radar', 'a height above what lay under the aircraft, not above the sea'],
  ['ground', 'a height above the ground, not above the sea'],
  ['selected', 'what was selected, not what was flown'],
  ['fuel', 'a value of the fuel system'],
  ['egt', 'an engine temperature'],
  ['distance', 'a distance'],
]);
