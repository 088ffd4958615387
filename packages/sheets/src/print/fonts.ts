import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { create, type Font } from "fontkit";
import type { FontName } from "../compose/text.ts";

/** Packages that ship the fonts: SIL Open Font License 1.1. */
const FILES: Readonly<Record<FontName, string>> = {
  latin: "@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf",
  latinBold: "@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf",
  cjk: "@expo-google-fonts/noto-sans-sc/400Regular/NotoSansSC_400Regular.ttf",
};

const require = createRequire(import.meta.url);
const files = new Map<FontName, Buffer>();
const opened = new Map<FontName, Font>();

/** The file of a shipped font, read once in a process: the Chinese one is 10 MB. */
export const fontFile = (name: FontName): Buffer => {
  const file = files.get(name) ?? readFileSync(require.resolve(FILES[name]));
  files.set(name, file);
  return file;
};

/** The shipped font, opened once in a process: the Chinese one takes longer to open than a sheet to write. */
export const openFont = (name: FontName): Font => {
  const known = opened.get(name);
  if (known !== undefined) return known;
  const font = create(fontFile(name));
  if (!("glyphForCodePoint" in font))
    throw new Error(`${FILES[name]} is a collection of fonts; one font was expected.`);
  opened.set(name, font);
  return font;
};
