const COLOUR = /^\s*(--[\w-]+):\s*light-dark\(([^,()]+),\s*([^,()]+)\);$/gm;

/**
 * A stylesheet without `light-dark()`, which browsers of a few years ago do not know: its light colours as they are,
 * and its dark ones for a dark screen. What is printed is light, whatever the screen is.
 */
export function plainColours(css: string): string {
  const dark = [...css.matchAll(COLOUR)].map(([, name, , colour]) => `    ${name}: ${colour};`);
  const light = css.replaceAll(COLOUR, '  $1: $2;');
  return `${light}\n@media screen and (prefers-color-scheme: dark) {\n  :root {\n${dark.join('\n')}\n  }\n}\n`;
}
