import { expect, it } from 'vitest';
import { plainColours } from '../../renderer/hand-over/plain-colours.ts';

const CSS = `:root {
  color-scheme: light dark;
  --paper: light-dark(#f6f5f1, #14181a);
  --ink: light-dark(#1d2326, #e6e8e6);
}
p { color: var(--ink); }
`;

it('has each colour as it is by day, and for a dark screen as it is by night', () => {
  const [light, dark] = plainColours(CSS).split('@media screen and (prefers-color-scheme: dark)');
  expect(light).toContain('--paper: #f6f5f1;');
  expect(light).toContain('--ink: #1d2326;');
  expect(dark).toContain('--paper: #14181a;');
  expect(dark).toContain('--ink: #e6e8e6;');
  expect(light + dark!).not.toContain('light-dark(');
});

it('leaves all else as it was', () => {
  expect(plainColours(CSS)).toContain('p { color: var(--ink); }');
  expect(plainColours(CSS)).toContain('color-scheme: light dark;');
});
