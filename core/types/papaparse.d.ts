/** What core uses of PapaParse and no more: the published types would drag Node's globals into core. */
declare module 'papaparse' {
  interface ParserConfig {
    readonly delimiter: string;
    readonly newline: string;
    readonly quoteChar: string;
  }
  interface ParserResult {
    readonly data: string[][];
    readonly errors: readonly { readonly code: string }[];
    /** `cursor`: where the first row not returned begins. */
    readonly meta: { readonly cursor: number };
  }
  interface Parser {
    parse(input: string, baseIndex: number, ignoreLastRow: boolean): ParserResult;
  }
  const Papa: {
    readonly Parser: new (config: ParserConfig) => Parser;
    /** The whole text at once: the benchmark's reference. */
    parse(text: string, config: { readonly skipEmptyLines: boolean }): ParserResult;
  };
  export default Papa;
}
