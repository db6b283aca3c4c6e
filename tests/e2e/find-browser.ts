import { chromiumPath } from './browser.ts';

/** Before any file of tests: two that begin together would both install it, and one of them would fail. */
export default function findBrowser(): void {
  chromiumPath();
}
