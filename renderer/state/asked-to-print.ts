/** Asks the page for its paper; what shows none of its own is printed as it stands. */
const ASKED = 'halfdot:print';

/** What the menu's Print does. */
export function askToPrint(): void {
  const asked = new Event(ASKED, { cancelable: true });
  // Taken by who prints a page of its own.
  if (document.dispatchEvent(asked)) print();
}

/** Hears it until what is returned is called. */
export function onAskedToPrint(hear: () => void): () => void {
  const take = (asked: Event) => {
    asked.preventDefault();
    hear();
  };
  document.addEventListener(ASKED, take);
  return () => document.removeEventListener(ASKED, take);
}
