import qrcode from "qrcode-generator";

/** Rim of empty modules around a code. Source: ISO/IEC 18004 (from memory). */
const QUIET = 4;

/** A two-dimensional code as one SVG path: sharp at any size, one ink. */
export function codeDrawing(text: string): string {
  const code = qrcode(0, "M");
  code.addData(text);
  code.make();
  const count = code.getModuleCount();
  let path = "";
  for (let row = 0; row < count; row++)
    for (let column = 0; column < count; column++)
      if (code.isDark(row, column)) path += `M${column + QUIET} ${row + QUIET}h1v1h-1z`;
  const size = count + 2 * QUIET;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}" width="${size}" height="${size}"><path d="${path}" fill="#111111"/></svg>`;
}
