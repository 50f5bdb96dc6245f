/** Gives the person a file. @param type media type; a text is JSON unless it says otherwise. */
export function saveFile(
  name: string,
  content: string | Uint8Array<ArrayBuffer>,
  type = "application/json",
): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
