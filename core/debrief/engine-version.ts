/** The version that a debrief was made with: the package's. The same version gives the same bytes. */
export const ENGINE_VERSION = '0.4.0';
