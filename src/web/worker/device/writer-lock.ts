const LOCK = "toeline-writer";

/**
 * Asks to be the one window of this browser that writes, and stays it until it is closed. While another one is, this waits.
 *
 * @param tell called once it is this one.
 */
export function becomeWriter(tell: () => void): void {
  void navigator.locks.request(LOCK, () => {
    tell();
    // held as long as the worker lives
    return new Promise<never>(() => {});
  });
}
