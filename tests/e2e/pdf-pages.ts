import { inflateSync } from 'node:zlib';

type Letters = ReadonlyMap<number, string>;

/**
 * What is written on each page of a PDF as Chromium makes one, bare of spaces, since it places letters one by one: its
 * streams deflated, its letters told by their fonts.
 */
export function pdfPages(pdf: Buffer): string[] {
  const file = pdf.toString('latin1');
  const objects = new Map<string, string>();
  for (const [, number, text] of file.matchAll(/(?:^|\n)(\d+) 0 obj\n([^]*?)\nendobj/g))
    objects.set(number!, text!);
  const object = (number: string) => objects.get(number) ?? '';
  const fonts = new Map<string, Letters>();
  const lettersOf = (font: string): Letters => {
    const known =
      fonts.get(font) ?? lettersIn(streamOf(object(/\/ToUnicode (\d+)/.exec(object(font))?.[1] ?? '')));
    fonts.set(font, known);
    return known;
  };
  const kids = [...objects.values()].filter((text) => /\/Type \/Page\b/.test(text));
  return kids.map((page) => {
    const names = /\/Font <<([^>]*)>>/.exec(page)?.[1] ?? '';
    const named = new Map(
      [...names.matchAll(/\/(\w+) (\d+) 0 R/g)].map(([, name, font]) => [name!, lettersOf(font!)]),
    );
    return wordsIn(streamOf(object(/\/Contents (\d+)/.exec(page)![1]!)), named);
  });
}

/** Text without its spaces, and without two letters drawn as one. */
export function bare(text: string): string {
  return text.normalize('NFKC').replaceAll(/\s+/g, '');
}

function streamOf(text: string): string {
  const begin = text.indexOf('stream\n');
  if (begin < 0) return '';
  const bytes = Buffer.from(text.slice(begin + 7, text.lastIndexOf('\nendstream')), 'latin1');
  return text.includes('/FlateDecode') ? inflateSync(bytes).toString('latin1') : bytes.toString('latin1');
}

/** What each code of a font stands for. */
function lettersIn(map: string): Letters {
  const letters = new Map<number, string>();
  const letter = (hex: string) => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, block] of map.matchAll(/beginbfchar\n([^]*?)endbfchar/g))
    for (const [, code, to] of block!.matchAll(/<(\w+)> <(\w+)>/g))
      letters.set(parseInt(code!, 16), letter(to!));
  for (const [, block] of map.matchAll(/beginbfrange\n([^]*?)endbfrange/g))
    for (const [, from, to, first] of block!.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g))
      for (let code = parseInt(from!, 16); code <= parseInt(to!, 16); code++)
        letters.set(code, String.fromCharCode(parseInt(first!, 16) + code - parseInt(from!, 16)));
  return letters;
}

function wordsIn(stream: string, fonts: ReadonlyMap<string, Letters>): string {
  let letters: Letters = new Map();
  let words = '';
  for (const [, font, shown] of stream.matchAll(/\/(\w+) [\d.]+ Tf|((?:<\w+>|\[[^\]]*\]) T[jJ])/g)) {
    if (font !== undefined) letters = fonts.get(font) ?? new Map();
    else {
      for (const [, hex] of shown!.matchAll(/<(\w+)>/g))
        for (let at = 0; at < hex!.length; at += 4)
          words += letters.get(parseInt(hex!.slice(at, at + 4), 16)) ?? '';
    }
  }
  return bare(words);
}
