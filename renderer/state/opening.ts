import type { Heights } from '../../core/debrief/heights.ts';
import type { LogSettings } from '../../core/log/log.ts';
import type { Stated } from '../../core/standard/stated.ts';

/** What a log may be opened with besides its bytes. */
export interface Opening {
  readonly isSample?: boolean;
  /** The host has it already. */
  readonly isCopied?: boolean;
  /** All that there is to state is stated: what is remembered of the log, or of its headers, is not taken over. */
  readonly isStated?: boolean;
  readonly settings?: LogSettings;
  readonly stated?: Partial<Stated>;
  readonly standardId?: string;
  readonly facilityId?: string;
  readonly heights?: Heights | null;
  readonly antennaHeightFt?: number | null;
}
