import { open } from "node:fs/promises";

/** Entry that every workbook of Office Open XML has. */
export const WORKBOOK_ENTRY = "[Content_Types].xml";

/** Whether a file starts like a ZIP; null when there is no such file. */
export async function startsLikeZip(path: string): Promise<boolean | null> {
  const file = await open(path, "r").catch(() => null);
  if (file === null) return null;
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(4), 0, 4, 0);
    return bytesRead === 4 && buffer.readUInt16LE(0) === 0x4b50;
  } finally {
    await file.close();
  }
}
