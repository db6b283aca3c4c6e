import { writeFileSync } from 'node:fs';
import { noticesOf, shippedPackages } from './licences.ts';

/** Writes the licence notices of what is passed on: `npm run licences`, from the project's folder. */
writeFileSync('docs/licences.txt', noticesOf(shippedPackages('.')));
