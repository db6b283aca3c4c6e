import type { Atmosphere } from '../flight/atmosphere.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import type { WindPlan } from '../flight/wind.ts';

/** Wind as a report gives it, turning a little to the right and half as strong again 2,000 ft up. */
export function windFrom(fromTrueDeg: number, speedKt: number, unrest: 'smooth' | 'bumpy' | 'rough'): WindPlan {
  const gusts = { smooth: [0.5, 15], bumpy: [1.3, 50], rough: [2.6, 110] } as const;
  const [gustKt, verticalGustFpm] = gusts[unrest];
  return {
    surface: { fromTrueDeg, speedKt },
    at2000Ft: { fromTrueDeg: fromTrueDeg + 20, speedKt: speedKt * 1.6 },
    gustKt,
    verticalGustFpm,
  };
}

/** The day's air at a facility: degrees above standard, and the altimeter setting in hPa. */
export function airAt(facility: FacilityFile, isaDeviationC: number, altimeterSettingHpa: number): Atmosphere {
  return {
    isaDeviationC,
    stationElevationFt: facility.airportElevationFt,
    settingErrorFt: 0,
    altimeterSettingHpa,
  };
}
