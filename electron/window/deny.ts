import type { ContentsPart, ElectronParts, Navigation, SessionPart } from './electron-parts.ts';
import { isOwnAddress, PAGE_ADDRESS } from './page-address.ts';

/** The page saves a file by a link that holds all of it, or to what it has made; from anywhere else nothing is fetched. */
function isSavedByPage(address: string): boolean {
  return /^data:application\/json[;,]/.test(address) || address.startsWith(`blob:${PAGE_ADDRESS}`);
}

/** Nothing is granted to any page, nothing is asked of any network, and nothing comes down but what the page made. */
export function denyToSession(session: SessionPart): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  // It would fetch its word lists from a server.
  session.setSpellCheckerEnabled(false);
  session.on('will-download', (event, item) => {
    // Of what is not prevented the runtime asks where to save it.
    if (!isSavedByPage(item.getURL())) event.preventDefault();
  });
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !isAtHome(url) }));
}

/** Keeps a page where it is: it goes nowhere, opens no window and no page within itself. */
export function denyToContents(contents: ContentsPart, openOutside: (address: string) => void): void {
  const stay = (navigation: Navigation): void => {
    if (navigation.url !== PAGE_ADDRESS) navigation.preventDefault();
  };
  contents.on('will-navigate', (navigation) => {
    stay(navigation);
    openOutside(navigation.url);
  });
  contents.on('will-frame-navigate', stay);
  contents.on('will-redirect', (navigation) => navigation.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(({ url }) => {
    openOutside(url);
    return { action: 'deny' };
  });
}

/** Opens a web page in the system's browser, by https alone: what else an address starts is not for a page to say. */
export function outsideOpener({ openExternal }: ElectronParts['shell']): (address: string) => void {
  return (address) => {
    const url = URL.canParse(address) ? new URL(address) : null;
    if (url?.protocol !== 'https:' || url.username !== '' || url.password !== '') return;
    // A system without a browser refuses: there is nothing that the page could do about it.
    openExternal(url.href).catch(() => {});
  };
}

function isAtHome(address: string): boolean {
  return isOwnAddress(address) || address.startsWith('data:') || address.startsWith(`blob:${PAGE_ADDRESS}`);
}
