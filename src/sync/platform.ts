/** The timers of a platform, so that a test can bring its own. */
export interface Timers {
  /** Calls once after so many milliseconds. @returns what ends the waiting. */
  after(milliseconds: number, call: () => void): () => void;
}

export const platformTimers: Timers = {
  after: (milliseconds, call) => {
    const timer = setTimeout(call, milliseconds);
    return () => clearTimeout(timer);
  },
};

export type Fetch = typeof globalThis.fetch;

/** What is used of a WebSocket: the browser's own fits, and so do those of other platforms. */
export interface LiveSocket {
  addEventListener(type: "message", listener: (event: { readonly data: unknown }) => void): void;
  addEventListener(type: "close", listener: () => void): void;
  addEventListener(type: "error", listener: () => void): void;
  close(): void;
}
