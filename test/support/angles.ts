/** "37 57 03.72030 S" or "-1 35 03.65" (degrees, minutes, seconds) as radians; S, W and a minus sign are negative. */
export function radiansFromDms(text: string): number {
  const negative = /[SW]\s*$|^\s*-/.test(text);
  const [degrees = Number.NaN, minutes = 0, seconds = 0] = (text.match(/\d+(?:\.\d+)?/g) ?? []).map(Number);
  return ((negative ? -1 : 1) * (degrees + minutes / 60 + seconds / 3600) * Math.PI) / 180;
}
