declare const KIT_VERSION: string;

/** What made an item or a test, as attributes of it. */
export const TOOL = { 'tool-name': 'lessontide', 'tool-version': KIT_VERSION } as const;
