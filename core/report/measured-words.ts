import { whole } from '../units/whole.ts';
import { sidedInDots } from './sided.ts';

/** How far off a criterion was, as it is read aloud: "high 1.3 dots", "+28 kt", "−1,120 ft/min". */
export function measuredWords(id: string, unit: string | null, value: number, dots: number): string {
  if (unit === 'full scale')
    return `${sidedInDots(value, id.startsWith('glidepath') ? 'glidepath' : 'localizer', dots)} dots`;
  const sign = value > 0 ? '+' : '';
  return unit === 'deg' ? `${sign}${whole(value)}°` : `${sign}${whole(value)} ${unit ?? ''}`.trim();
}
