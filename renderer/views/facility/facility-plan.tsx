import type { PlanOutline } from '../../worker/protocol.ts';

const WIDTH = 560;
const HEIGHT = 420;
const MARGIN = 24;
const RADIANS_PER_DEGREE = Math.PI / 180;

interface Props {
  readonly plan: readonly PlanOutline[];
  readonly name: string;
}

/** A facility from above, north up: runway, course, full and half scale to 18 NM, and rings about the threshold. */
export function FacilityPlan({ plan, name }: Props) {
  const { place } = fitted(plan);
  return (
    <svg
      className="plan"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`${name} from above, north up`}
    >
      {plan.map((shape, i) => (
        <polyline
          key={`${i} ${shape.kind}`}
          className={shape.kind}
          points={shape.points.map((point) => place(point).join(',')).join(' ')}
        />
      ))}
      {plan.map((shape) => {
        if (shape.distanceNm === null) return null;
        const [x, y] = place(shape.points[0]!);
        return (
          <text key={shape.distanceNm} x={x} y={y - 4} textAnchor="middle">
            {`${shape.distanceNm} NM`}
          </text>
        );
      })}
    </svg>
  );
}

/** Fits all that is drawn into the picture, as wide as high on the ground. */
function fitted(plan: readonly PlanOutline[]) {
  const points = plan.flatMap((shape) => shape.points);
  const [lons, lats] = [points.map(([lon]) => lon), points.map(([, lat]) => lat)];
  const [west, east] = [Math.min(...lons), Math.max(...lons)];
  const [south, north] = [Math.min(...lats), Math.max(...lats)];
  const narrow = Math.cos(((south + north) / 2) * RADIANS_PER_DEGREE);
  const scale = Math.min(
    (WIDTH - 2 * MARGIN) / ((east - west) * narrow),
    (HEIGHT - 2 * MARGIN) / (north - south),
  );
  const place = ([lon, lat]: readonly [number, number]): readonly [number, number] => [
    Math.round(10 * (WIDTH / 2 + (lon - (west + east) / 2) * narrow * scale)) / 10,
    Math.round(10 * (HEIGHT / 2 - (lat - (south + north) / 2) * scale)) / 10,
  ];
  return { place };
}
