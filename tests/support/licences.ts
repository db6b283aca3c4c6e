import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A package that is installed where the program is, and so passed on with it. */
export interface Shipped {
  readonly name: string;
  readonly version: string;
  /** As its package says, an SPDX expression. */
  readonly licence: string;
  /** The whole text; null where the package holds none. */
  readonly text: string | null;
}

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
}

/** Every package of the lock file that is not for development alone, in the order of their names. */
export function shippedPackages(root: string): Shipped[] {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, Locked>;
  };
  return Object.entries(packages)
    .filter(([path, { dev }]) => path !== '' && !dev)
    .map(([path, { version, license }]) => ({
      name: path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      version: version!,
      licence: license ?? licenceIn(join(root, path)),
      text: textIn(join(root, path)),
    }))
    .sort((a, b) => (`${a.name}@${a.version}` < `${b.name}@${b.version}` ? -1 : 1));
}

function licenceIn(folder: string): string {
  const { license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { license?: string };
  return license ?? 'none named';
}

function textIn(folder: string): string | null {
  if (!existsSync(folder)) return null;
  const name = readdirSync(folder).find((file) => /^licen[cs]e(\.|$)/i.test(file));
  return name === undefined ? null : readFileSync(join(folder, name), 'utf8').replaceAll('\r\n', '\n').trim();
}

/** The notices that go with the program: each text once, under all the packages that it is of. */
export function noticesOf(packages: readonly Shipped[]): string {
  const byText = new Map<string, string[]>();
  for (const { name, version, licence, text } of packages) {
    const key = text ?? `The package holds no text of its licence: ${licence}.`;
    byText.set(key, [...(byText.get(key) ?? []), `${name} ${version} (${licence})`]);
  }
  const parts = [...byText].map(([text, names]) => `${names.join('\n')}\n\n${text}\n`);
  return `Halfdot passes on these packages, each under its own licence.\n\n${parts.join(`\n${'-'.repeat(80)}\n\n`)}`;
}
