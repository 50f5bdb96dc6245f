/** Lets questions of the screens through before long work goes on. */
export const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
