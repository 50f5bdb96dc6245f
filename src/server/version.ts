/** Put in place when the program is bundled. */
declare const TOELINE_VERSION: string | undefined;

export const version = typeof TOELINE_VERSION === "string" ? TOELINE_VERSION : "unbuilt";
