import { homedir } from 'node:os';
import { join } from 'node:path';

/** Where the app keeps what is the user's: the system's own place for it, or another by HALFDOT_USER_FOLDER. */
export function userFolder(env: NodeJS.ProcessEnv, platform: NodeJS.Platform, home = homedir()): string {
  if (env['HALFDOT_USER_FOLDER']) return env['HALFDOT_USER_FOLDER'];
  if (platform === 'win32') return join(env['APPDATA'] ?? join(home, 'AppData', 'Roaming'), 'halfdot');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'halfdot');
  return join(env['XDG_CONFIG_HOME'] ?? join(home, '.config'), 'halfdot');
}
