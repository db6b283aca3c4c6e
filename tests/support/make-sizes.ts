import { sizesOf, sizesTable } from './sizes.ts';

/** Prints how long files and functions are, room by room: `npm run sizes`. */
console.log(sizesTable(['core', 'electron', 'renderer', 'tests'].map(sizesOf)));
