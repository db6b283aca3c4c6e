"""The deviations of a log as a script with pandas and pyproj computes them: what `halfdot deviations` is held against.

usage: peer.py LOG.csv FACILITY.json OUT.csv
Written from design, section 4, without a look at core/: local frames by PROJ's topocentric conversion, the antenna and
the ground point by GeographicLib as pyproj has it.
"""

import json
import math
import sys

import numpy as np
import pandas as pd
from pyproj import Geod, Transformer

FOOT_M = 0.3048
NM_M = 1852.0
SETBACK_FT = 1000.0


def frame(lat, lon, elevation_ft):
    """East, north and up of positions, in metres, about a place."""
    return Transformer.from_pipeline(
        "+proj=pipeline +step +proj=unitconvert +xy_in=deg +xy_out=rad +step +proj=cart +ellps=WGS84 "
        f"+step +proj=topocentric +ellps=WGS84 +lat_0={lat!r} +lon_0={lon!r} +h_0={elevation_ft * FOOT_M!r}"
    )


def main(log_path, facility_path, out_path):
    with open(facility_path, encoding="utf-8") as file:
        facility = json.load(file)
    runway, glidepath = facility["runway"], facility["glidepath"]
    threshold, bearing = runway["threshold"], runway["trueBearingDeg"]
    elevation_ft = threshold["elevationFt"]
    geod = Geod(ellps="WGS84")

    distance_m = (runway["lengthFt"] + SETBACK_FT) * FOOT_M
    lon, lat, back = geod.fwd(threshold["lonDeg"], threshold["latDeg"], bearing, distance_m)
    course = (back + 180.0) % 360.0
    full_scale = min(max(math.degrees(math.atan(350.0 * FOOT_M / distance_m)), 1.5), 3.0)
    angle = glidepath["angleDeg"]
    slope = math.tan(math.radians(angle))
    ground_m = glidepath["thresholdCrossingHeightFt"] / slope * FOOT_M
    ground_lon, ground_lat, _ = geod.fwd(threshold["lonDeg"], threshold["latDeg"], bearing, ground_m)

    names = {"UTC": "timeUtc", "Latitude (deg)": "latDeg", "Longitude (deg)": "lonDeg", "GNSS Altitude (ft MSL)": "altitudeFt"}
    log = pd.read_csv(log_path, usecols=list(names)).rename(columns=names)
    position = (log["lonDeg"].to_numpy(), log["latDeg"].to_numpy(), log["altitudeFt"].to_numpy() * FOOT_M)

    east, north, _ = frame(lat, lon, elevation_ft).transform(*position)
    toward = course + 180.0 - np.degrees(np.arctan2(east, north))
    log_deg = (toward + 180.0) % 360.0 - 180.0

    east, north, up = frame(threshold["latDeg"], threshold["lonDeg"], elevation_ft).transform(*position)
    sine, cosine = math.sin(math.radians(bearing)), math.cos(math.radians(bearing))
    log["distanceToThresholdNm"] = -(east * sine + north * cosine) / NM_M
    log["centrelineOffsetFt"] = (east * cosine - north * sine) / FOOT_M
    log["localizerDeg"] = log_deg
    log["localizerFullScale"] = log_deg / full_scale

    east, north, up = frame(ground_lat, ground_lon, elevation_ft).transform(*position)
    along = np.hypot(east, north)
    log["glidepathDeg"] = np.degrees(np.arctan2(up, along)) - angle
    log["glidepathFullScale"] = log["glidepathDeg"] / (0.24 * angle)
    log["heightAboveGlidepathFt"] = (up - along * slope) / FOOT_M

    order = ["timeUtc", "latDeg", "lonDeg", "altitudeFt", "distanceToThresholdNm", "centrelineOffsetFt", "localizerDeg"]
    order += ["localizerFullScale", "glidepathDeg", "glidepathFullScale", "heightAboveGlidepathFt"]
    log[order].to_csv(out_path, index=False)


if __name__ == "__main__":
    main(*sys.argv[1:])
