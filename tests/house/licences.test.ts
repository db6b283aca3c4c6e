import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shippedPackages, type Shipped } from '../support/licences.ts';
import { ROOT } from './source-files.ts';

/** What asks for no more than that its notice goes along (read in each text). */
const FREE = new Set([
  '0BSD',
  'Apache-2.0',
  'BSD-3-Clause',
  'ISC',
  'MIT',
  'Unlicense',
  '(EDL-1.0 OR EPL-1.0)',
  'MIT AND ISC AND BSD-3-Clause',
  // A slip in its package: the text is that of BSD-3-Clause.
  'BDS-3-Clause',
]);

describe('what is passed on with the program', () => {
  const packages = shippedPackages(ROOT);

  it('is under licences that let it be', () => {
    expect(packages.length).toBeGreaterThan(50);
    // One names none, and has the text of the BSD licences.
    const isBsd = (text: string | null) =>
      text?.includes('Redistribution and use in source and binary forms');
    const isFree = ({ licence, text }: Shipped) =>
      FREE.has(licence) || (licence === 'none named' && isBsd(text));
    expect(packages.filter((one) => !isFree(one))).toEqual([]);
  });

  it('stands in the notices, every version of it, and nothing else does (`npm run licences`)', () => {
    const notices = readFileSync(join(ROOT, 'docs', 'licences.txt'), 'utf8');
    const named = [...notices.matchAll(/^(\S+) (\d\S*) \([^\n]*\)$/gm)].map(
      ([, name, version]) => `${name} ${version}`,
    );
    expect(named.sort()).toEqual(packages.map(({ name, version }) => `${name} ${version}`).sort());
  });
});
