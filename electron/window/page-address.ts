/** The window's page has a scheme of its own: no file of the disk is ever a page, and no server answers for it. */
export const SCHEME = 'halfdot';
const HOST = 'app';
export const PAGE_ADDRESS = `${SCHEME}://${HOST}/`;

/** Whether an address is the page's or a file's of it. Node gives a scheme of one's own no `origin` to compare. */
export function isOwnAddress(address: string): boolean {
  try {
    const { protocol, host, username, password } = new URL(address);
    return protocol === `${SCHEME}:` && host === HOST && username === '' && password === '';
  } catch {
    return false;
  }
}
