import type { Sheet } from '../../core/sheet/sheet.ts';
import { EventLines } from './event-lines.tsx';
import type { Frame } from './frame.ts';
import { Hatch, MilesAxis } from './axis.tsx';
import { PlanPanel } from './plan-panel.tsx';
import { FixMarks, ProfilePanel } from './profile-panel.tsx';
import { StripChart } from './strip-chart.tsx';
import { Unrecorded } from './unrecorded.tsx';

interface Props {
  readonly frame: Frame;
  /** Other approaches on the same axes, told apart by a number and a line style. */
  readonly others?: readonly Sheet[];
  /** Of the pattern of what is unclear: two sheets on one page need two. */
  readonly patternId?: string;
}

/**
 * The sheet of one approach: profile, plan and strips over one axis. No state, no effect and no measuring, so that
 * the page mounts it and a file to hand over prints it.
 */
export function SheetFigure({ frame, others = [], patternId = 'unclear' }: Props) {
  const { width, height, sheet } = frame;
  const panels = [frame.profile, frame.plan, ...frame.strips];
  return (
    <svg
      className="sheet"
      viewBox={`0 0 ${width} ${Math.round(height)}`}
      width={width}
      height={Math.round(height)}
      role="img"
      aria-label={`${sheet.title}, at ${sheet.facilityName}: profile, plan and strips`}
    >
      <Hatch id={patternId} />
      {panels.map(({ top, height: tall }) => (
        <clipPath key={top} id={`${patternId}-${Math.round(top)}`}>
          <rect x={frame.left} y={top} width={frame.right - frame.left} height={tall} />
        </clipPath>
      ))}
      <MilesAxis frame={frame} />
      <ProfilePanel frame={frame} others={others} clip={`${patternId}-${Math.round(frame.profile.top)}`} />
      <PlanPanel frame={frame} others={others} clip={`${patternId}-${Math.round(frame.plan.top)}`} />
      {frame.strips.map((panel) => (
        <StripChart
          key={panel.strip.id}
          frame={frame}
          panel={panel}
          others={others}
          patternId={patternId}
          clip={`${patternId}-${Math.round(panel.top)}`}
        />
      ))}
      <Unrecorded frame={frame} />
      <FixMarks frame={frame} />
      <EventLines frame={frame} />
    </svg>
  );
}
