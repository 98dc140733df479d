declare module 'commonmark-spec' {
  /** The examples of the specification, with tabs written as tabs. */
  export const tests: readonly {
    readonly number: number;
    readonly section: string;
    readonly markdown: string;
    readonly html: string;
  }[];
}
