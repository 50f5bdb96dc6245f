/** "1 element", "3 elements". @param noun whose plural takes an s. */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? "" : "s"}`;
