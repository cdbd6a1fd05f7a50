declare module 'saxen' {
  /** A streaming reader of XML; only what is used here. */
  export class Parser {
    on(
      event: 'openTag',
      take: (
        name: string,
        attributes: () => Record<string, string>,
        decode: (text: string) => string,
      ) => void,
    ): this;
    on(event: 'closeTag', take: (name: string) => void): this;
    on(event: 'text' | 'cdata', take: (text: string, decode: (text: string) => string) => void): this;
    on(event: 'error', take: (error: Error) => void): this;
    parse(xml: string): void;
  }
}
