/** What no file system takes, or what makes a name be read as another: separators, controls, marks of direction. */
const UNSAFE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}"*/:<>?\\|]+/gu;
/** Names of devices, which Windows keeps for itself whatever ending follows them (from memory). */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)(?=\.|$)/i;
/** Leaves room for an ending and a number within the 255 bytes of most file systems. */
const LONGEST_BYTES = 180;

/** A name that can be a file's on any system: "-" in place of what cannot; "file" where nothing is left. */
export function fileName(name: string): string {
  const plain = name.replaceAll(UNSAFE, '-').replaceAll(/^[\s.-]+|[\s.]+$/g, '');
  const short = shortened(plain);
  if (short === '') return 'file';
  return DEVICE.test(short) ? `-${short}` : short;
}

function shortened(name: string): string {
  const encoder = new TextEncoder();
  let letters = [...name];
  while (encoder.encode(letters.join('')).length > LONGEST_BYTES) letters = letters.slice(0, -1);
  return letters.join('').replaceAll(/[\s.]+$/g, '');
}
