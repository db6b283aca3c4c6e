import { useEffect, useRef } from 'react';

/** Hears keys wherever the keyboard is in the page, since it was a button that led here; but for those of a field. */
export function useKeys(press: (event: KeyboardEvent) => void): void {
  const pressed = useRef(press);
  useEffect(() => {
    pressed.current = press;
  });
  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey || isForField(event)) return;
      pressed.current(event);
    };
    document.addEventListener('keydown', hear);
    return () => document.removeEventListener('keydown', hear);
  }, []);
}

/** Keys that are meant for a field, or for the button under the focus. */
function isForField({ target, key }: KeyboardEvent): boolean {
  const { tagName, type } = target as HTMLInputElement;
  if (tagName === 'BUTTON' || tagName === 'SUMMARY' || type === 'checkbox') return key === ' ';
  return tagName === 'SELECT' || tagName === 'TEXTAREA' || (tagName === 'INPUT' && type !== 'range');
}
