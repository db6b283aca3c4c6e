import { useEffect, useState } from 'react';

/**
 * What the worker makes of a text that is being written: `kept` is what it made of the text that was kept. That of the
 * text before is given, and said to be old, until it has answered.
 */
export function useReading<R>(
  text: string,
  kept: { readonly text: string; readonly reading: R | null },
  read: (text: string) => Promise<R | null>,
): { readonly reading: R | null; readonly isCurrent: boolean } {
  const [checked, setChecked] = useState({ text: kept.text, reading: kept.reading });
  useEffect(() => {
    let isCurrent = true;
    void read(text).then((reading) => isCurrent && setChecked({ text, reading }));
    return () => {
      isCurrent = false;
    };
  }, [kept, read, text]);
  return { reading: checked.reading, isCurrent: checked.text === text };
}
