/** Put in place when the program is bundled. */
declare const TOELINE_VERSION: string | undefined;

/** Version of the program, as papers, entries and results name it. */
export const version = typeof TOELINE_VERSION === "string" ? TOELINE_VERSION : "unbuilt";
