type Progress = (share: number | null) => void;

/**
 * Tells a share from 0 to 1 on only where its whole percent is another than that of the last, null for one unknown.
 * Each that is told is drawn, and thousands of them a second left the page no time to hear that it is to stop.
 */
export function byPercent(tell: Progress): Progress {
  let last: number | null | undefined;
  return (share) => {
    const percent = share === null ? null : Math.round(share * 100);
    if (percent === last) return;
    last = percent;
    tell(share);
  };
}
