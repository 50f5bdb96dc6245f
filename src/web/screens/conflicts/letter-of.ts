/** A, B, C …: what the values of a conflict are called. */
export const letterOf = (index: number): string => String.fromCharCode("A".charCodeAt(0) + index);
