import { useKeyDown } from '../views/use-key-down.ts';

/** Hears keys wherever the keyboard is in the page, since it was a button that led here; but for those of a field. */
export function useKeys(press: (event: KeyboardEvent) => void): void {
  useKeyDown((event) => {
    if (event.ctrlKey || event.altKey || event.metaKey || isForField(event)) return;
    press(event);
  });
}

/** Keys that are meant for a field, or for the button under the focus. */
function isForField({ target, key }: KeyboardEvent): boolean {
  const { tagName, type } = target as HTMLInputElement;
  if (tagName === 'BUTTON' || tagName === 'SUMMARY' || type === 'checkbox') return key === ' ';
  return tagName === 'SELECT' || tagName === 'TEXTAREA' || (tagName === 'INPUT' && type !== 'range');
}
