import { describe, expect, it } from 'vitest';
import {
  folded,
  headerWord,
  isSameName,
  meantBy,
  nameInOrder,
  nameKeys,
} from '../../../electron/bridge/names.ts';

describe('spellings of a name', () => {
  it.each([
    ['Nils Brambling', 'Brambling, Nils'],
    ['Nils Brambling', 'brambling_nils'],
    ['Nils Brambling', 'NILS-BRAMBLING'],
    ['José Lark', 'jose lark'],
    ['José Lark', 'Jose\u0301 Lark'],
    ['Jörg Möwe', 'Moewe, Joerg'],
    ['Jörg Möwe', 'jorg mowe'],
    ['Åsa Ørn', 'asa orn'],
    ['Åsa Ørn', 'Aasa Oern'],
    ["Maeve O'Finch", 'ofinch maeve'],
    ['Anna van der Kiebitz', 'van der Kiebitz, Anna'],
    ['Łucja Żuraw', 'lucja zuraw'],
  ])('%s is %s', (a, b) => {
    expect(isSameName(a, b)).toBe(true);
    expect(isSameName(b, a)).toBe(true);
  });

  it.each([
    ['Nils Brambling', 'Nils Bramblin'],
    ['Nils Brambling', 'Nils'],
    ['Nils Brambling', 'Nils Brambling 2'],
    ['', ''],
    ['–', '_'],
  ])('"%s" is not "%s"', (a, b) => expect(isSameName(a, b)).toBe(false));

  it('have no key without a letter', () => expect(nameKeys(' - ')).toEqual([]));
});

describe('a text as it is searched and sorted', () => {
  it.each([
    ['Großmüller', 'grossmuller\ngrossmueller'],
    ['ÜNAL', 'unal\nuenal'],
    ['U\u0308nal', 'unal\nuenal'],
    ['Łukasz Ångström', 'lukasz angstrom\nlukasz aangstroem'],
    ['İpek Şahin', 'ipek sahin'],
    ['Ærø', 'aero\naeroe'],
    ['QQ-XYZ 14.csv', 'qq-xyz 14.csv'],
    ['¾ scale', '¾ scale'],
    ['', ''],
  ])('of "%s"', (text, expected) => expect(folded(text)).toBe(expected));
});

describe('a name that is kept', () => {
  it.each([
    ['Brambling, Nils', 'Nils Brambling'],
    ['  Nils   Brambling ', 'Nils Brambling'],
    ['Rowan Teal, Jr.', 'Rowan Teal, Jr.'],
    ['Teal, Rowan, Hazel', 'Teal, Rowan, Hazel'],
    ['Brambling,', 'Brambling,'],
  ])('of "%s" is "%s"', (written, kept) => expect(nameInOrder(written)).toBe(kept));
});

it('a word of a header is without case, accents and marks', () => {
  expect(['First name', 'first_name', 'Prénom', 'Schüler'].map(headerWord)).toEqual([
    'firstname',
    'firstname',
    'prenom',
    'schuler',
  ]);
});

describe('whom a name means', () => {
  const people = ['Nils Brambling', 'Özgür Ångström', 'Rowan Teal', 'rowan teale', 'Student 2 (3)'].map(
    (name) => ({
      name,
    }),
  );
  it.each([
    ['nils brambling', ['Nils Brambling']],
    ['Brambling, Nils', ['Nils Brambling']],
    ['ångström özgür', ['Özgür Ångström']],
    [' ROWAN TEAL ', ['Rowan Teal']],
    ['Student 3 (2)', []],
    ['Hazel Wren', []],
  ])('%s', (name, meant) => expect(meantBy(people, name).map((one) => one.name)).toEqual(meant));

  it('is who is written so before those who are spelt so', () => {
    const both = [{ name: 'Jörg Teal' }, { name: 'Joerg Teal' }];
    expect(meantBy(both, 'joerg teal')).toEqual([{ name: 'Joerg Teal' }]);
    expect(meantBy(both, 'Teal, Joerg')).toHaveLength(2);
  });
});
